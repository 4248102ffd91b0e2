import type { CastEntry } from '../../callsheet/cast/cast-entry.ts';
import { checkPattern } from '../../day/files/file-pattern.ts';
import type { Day, PartId, VoiceId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import { type HeaderFields, TIMECODE_RATES } from '../../facts/kinds/day-described.ts';
import type { PartFields } from '../../facts/kinds/part-described.ts';
import type { RecorderSettings } from '../../facts/kinds/recorder-set.ts';
import { VOICE_TEXT_LONGEST, type VoiceFields } from '../../facts/kinds/voice-described.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import { nextRank } from '../cast/change-cast.ts';
import { planCast } from '../cast/plan-cast.ts';
import { type CommandResult, missing } from '../command.ts';
import { otherRecorderProblem } from '../rig/other-recorder.ts';
import { nameProblem } from '../rig/part-names.ts';

/** Sets fields of the day's header; each holds for the whole day. */
export function describeDay(fields: HeaderFields): CommandResult {
  const { date } = fields;
  if (date && Number.isNaN(Date.parse(`${date}T12:00:00Z`)))
    return fail({ code: 'date-unknown', typed: date });
  return settingsProblem(fields) ?? ok([{ kind: 'day-described', fields }]);
}

/** Why a recorder cannot be set like this; null if it can. */
export function settingsProblem({
  timecodeRate,
  filePattern,
}: RecorderSettings): Result<never, Problem> | null {
  if (timecodeRate && !isOneOf(TIMECODE_RATES, timecodeRate))
    return fail({ code: 'rate-unknown', timecodeRate });
  const pattern = filePattern === undefined ? null : checkPattern(filePattern);
  return pattern && !pattern.ok ? pattern : null;
}

/** Sets fields of a voice; a spelling corrected once is corrected everywhere. */
export function describeVoice(day: Day, voice: VoiceId, fields: VoiceFields): CommandResult {
  if (!day.voices.has(voice)) return missing('voice', voice);
  if (fields.part !== undefined && fields.part.trim() === '') return fail({ code: 'name-empty' });
  return ok([{ kind: 'voice-described', voice, fields }]);
}

/** Adds one voice. `id` is new. */
export function addVoice(fields: VoiceFields, id: VoiceId): CommandResult {
  const part = fields.part?.trim() ?? '';
  if (part === '' && (fields.person ?? '').trim() === '') return fail({ code: 'name-empty' });
  return ok([{ kind: 'voice-described', voice: id, fields: { ...fields, part } }]);
}

/**
 * Adds the performers from a call sheet. Those already there (by cast number, or by name if there is none)
 * are updated, not duplicated; fields the sheet leaves empty are unchanged.
 */
export function addCast(day: Day, entries: readonly CastEntry[], newId: () => VoiceId): CommandResult {
  if (entries.length === 0) return fail({ code: 'cast-empty' });
  let rank = nextRank(day);
  const said = planCast(day, entries).flatMap(({ entry, does, known }): Draft[] => {
    const names = namesSaid(entry);
    if (does === 'nothing') return [];
    if (known) {
      const fields = { ...names, ...(known.struck && { struck: false }) };
      return [{ kind: 'voice-described', voice: known.id, fields }];
    }
    const fields: VoiceFields = { kind: 'performer', number: entry.number, ...names, priority: rank };
    rank = Math.min(499, rank + 1);
    return [{ kind: 'voice-described', voice: newId(), fields }];
  });
  return said.length === 0 ? fail({ code: 'nothing-changed' }) : ok(said);
}

const namesSaid = ({ part, person, pickUp = '', onSet = '' }: CastEntry): VoiceFields => ({
  ...(part !== '' && { part }),
  ...(person !== '' && { person }),
  ...(pickUp !== '' && { pickUp: pickUp.slice(0, VOICE_TEXT_LONGEST.pickUp) }),
  ...(onSet !== '' && { onSet: onSet.slice(0, VOICE_TEXT_LONGEST.onSet) }),
});

/** Sets fields of a part of the rig, for the whole day. Two parts of one type may not share a name. */
export function describePart(day: Day, part: PartId, fields: PartFields): CommandResult {
  const known = day.rig.byId.get(part);
  if (!known) return missing('part', part);
  const name = fields.name?.trim();
  const wrong =
    (name === undefined ? null : nameProblem(day, { ...known, name })) ??
    (fields.recorder === undefined
      ? null
      : otherRecorderProblem(day, { ...known, name: name ?? known.name }, fields.recorder));
  const said = name === undefined ? fields : { ...fields, name };
  return wrong ?? ok([{ kind: 'part-described', part, fields: said }]);
}
