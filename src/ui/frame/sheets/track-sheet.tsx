import { useState } from 'preact/hooks';
import { answersBefore } from '../../../day/answers/answers.ts';
import type { TrackAnswer, TrackState } from '../../../day/answers/track-answers.ts';
import {
  isSubject,
  type Subject,
  type SubjectAnswer,
  subjectAt,
  subjectOf,
} from '../../../day/answers/track-subject.ts';
import type { Day, PartId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { breakWords, nameOf, partName, pathWords } from '../../words/chain.ts';
import { MARK_MEANS } from '../../words/means.ts';
import { useDay } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { Because } from './because.tsx';
import { EndGang, GangClash } from './gang-actions.tsx';
import { GiveList } from './give-list.tsx';
import { TrackActions } from './track-actions.tsx';

interface TrackProps {
  readonly track: PartId;
  /** The input whose row was tapped, if any: the sheet is about whoever comes in by it. */
  readonly input?: PartId | undefined;
  /** The take that changes go before at first; default now. */
  readonly from?: string | undefined;
  readonly onClose: () => void;
}

/**
 * One track: who is on it and why, whose pack goes where, and what else can change. It stays with the pack or
 * hardline it was opened for at any place on the line, until another is tapped.
 */
export function TrackSheet({ track, input, from, onClose }: TrackProps) {
  const day = useDay().day.value;
  const [before, setBefore] = useState<string | undefined>(from);
  const [subject, setSubject] = useState<Subject | null>(() => {
    const { tracks } = answersBefore(day, from);
    const heard = tracks.find((one) => one.track.id === track)?.heard ?? [];
    const meant = input === undefined ? heard[0] : heard.find((one) => one.input === input);
    return meant ? subjectOf(meant) : null;
  });
  const answers = answersBefore(day, before);
  const answer = answers.tracks.find((one) => one.track.id === track);
  if (!answer) return null;
  const stands = subject ? subjectAt(answers, track, subject) : undefined;
  const pack = subject && 'pack' in subject ? subject.pack : null;
  const others = answer.heard.filter((one) => !isSubject(subject, one));
  return (
    <Sheet
      title={titleOf(day, answer, subject, stands)}
      under={stands ? underTitle(day, answer, stands) : `track ${answer.track.name}`}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      {SAID.has(answer.state) && <p class="section-title soft">{meansOf(answer.state)}</p>}
      {answer.state === 'clash' && <GangClash answer={answer} before={before} onDone={onClose} />}
      {others.length > 0 && <WhichVoice answer={answer} subject={subject} onChoose={setSubject} />}
      {pack && (
        <>
          <p class="section-title soft">Give {partName(day.rig, pack)} to</p>
          <GiveList transmitter={pack} before={before} onDone={onClose} />
        </>
      )}
      {answer.state !== 'clash' && <EndGang answer={answer} before={before} onDone={onClose} />}
      <TrackActions answer={answer} subject={stands} before={before} onDone={onClose} />
      <Because because={stands && !stands.heard ? (stands.path?.because ?? []) : answer.because} />
    </Sheet>
  );
}

function titleOf(
  day: Day,
  answer: TrackAnswer,
  subject: Subject | null,
  stands: SubjectAnswer | undefined,
): string {
  if (!subject || !stands) return answer.name || `Track ${answer.track.name}: nobody`;
  if ('hardline' in subject) return nameOf(day, subject.hardline);
  return `${partName(day.rig, subject.pack)} is on ${nameOf(day, stands.voice)}`;
}

/** The route to the track; or, where it does not lead to this track, where it leads instead. */
function underTitle({ rig }: Day, { track }: TrackAnswer, { heard, path }: SubjectAnswer): string {
  const way = path ? pathWords(rig, path) : '';
  if (heard) return [way, `track ${track.name}`].filter(Boolean).join(' › ');
  const elsewhere = path?.tracks.map((id) => partName(rig, id)).join(', ');
  const end = elsewhere ? `track ${elsewhere}` : path && breakWords(rig, path);
  return [[way, end].filter(Boolean).join(' › '), `not on track ${track.name}`].filter(Boolean).join(' · ');
}

/** States that a newcomer may ask about. */
const SAID: ReadonlySet<TrackState> = new Set(['gang', 'clash', 'muted']);

const meansOf = (state: TrackState): string => {
  const { word, means } = MARK_MEANS[state as 'gang' | 'clash' | 'muted'];
  return `${word[0]!.toUpperCase()}${word.slice(1)}: ${means[0]!.toLowerCase()}${means.slice(1)}`;
};

interface WhichProps {
  readonly answer: TrackAnswer;
  readonly subject: Subject | null;
  readonly onChoose: (subject: Subject) => void;
}

/** Who is on the track there: tapping one makes the sheet about them. */
function WhichVoice({ answer, subject, onChoose }: WhichProps) {
  const day = useDay().day.value;
  const isElsewhere = subject !== null && !answer.heard.some((one) => isSubject(subject, one));
  return (
    <>
      {isElsewhere && <p class="section-title soft">On track {answer.track.name} instead</p>}
      <div class="section buttons" role="group" aria-label="Which of them">
        {answer.heard.map((one) => (
          <Button
            key={one.source.id}
            pressed={isSubject(subject, one)}
            onClick={() => onChoose(subjectOf(one))}
          >
            {nameOf(day, one.voice)}
          </Button>
        ))}
      </div>
    </>
  );
}
