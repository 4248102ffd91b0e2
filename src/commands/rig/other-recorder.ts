import { answersNow } from '../../day/answers/answers.ts';
import type { Day, Part, PartId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { fail, type Problem, type Result } from '../../shared/result.ts';
import { missing } from '../command.ts';
import { firstTracksProblem } from './grow-rig.ts';
import { nameProblem } from './part-names.ts';
import { recordedProblem, rolledProblem } from './strike-part.ts';

/**
 * Why an input, a track or a send cannot be of another recorder for the whole day: takes have it where it is, its
 * name is taken there, or what it is sent to stays behind. Null if it can.
 */
export function otherRecorderProblem(day: Day, part: Part, recorder: PartId): Result<never, Problem> | null {
  if (recorderOfPart(part) === recorder) return null;
  if (!recordersOf(day).some(({ id }) => id === recorder)) return missing('recorder', recorder);
  return (
    recordedProblem(day, part, new Set([part.id])) ??
    (part.type === 'track' ? (rolledProblem(day, part) ?? firstTracksProblem(day, recorder)) : null) ??
    nameProblem(day, { ...part, recorder }) ??
    routeProblem(day, part)
  );
}

/** An input feeds tracks of its own recorder only. */
function routeProblem(day: Day, { id }: Part): Result<never, Problem> | null {
  for (const { input, reach } of answersNow(day).inputs) {
    const track = reach.tracks.find((one) => input.id === id || one === id);
    if (track)
      return fail({ code: 'track-elsewhere', input: input.name, track: day.rig.byId.get(track)!.name });
  }
  return null;
}
