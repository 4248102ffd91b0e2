import { useState } from 'preact/hooks';
import { type Answers, answersBefore } from '../../../day/answers/answers.ts';
import type { TrackAnswer } from '../../../day/answers/track-answers.ts';
import { isSubject, type Subject, subjectAt, subjectOf } from '../../../day/answers/track-subject.ts';
import type { PartId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { nameOf } from '../../words/chain.ts';
import { ofRecorder } from '../../words/recorder-names.ts';
import { useDay } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { Because } from './because.tsx';
import { GiveList } from './give-list.tsx';
import { TrackActions } from './track-actions.tsx';
import { TrackFirst } from './track-first.tsx';
import { meansOf, subjectTitle, subjectUnder, trackTitle, trackUnder } from './track-words.ts';

interface TrackProps {
  readonly track: PartId;
  /** The input whose row was tapped, if any: the sheet is about whoever comes in by it. */
  readonly input?: PartId | undefined;
  /** The take that changes go before at first; default now. */
  readonly from?: string | undefined;
  readonly onClose: () => void;
}

/** What was tapped: one pack or hardline; the track itself, if several or nobody are on it. */
interface Tapped {
  readonly about: Subject | 'track';
  /** Whose pack can be given away. */
  readonly whose: Subject | null;
}

const trackOf = ({ tracks }: Answers, track: PartId): TrackAnswer | undefined =>
  tracks.find((one) => one.track.id === track);

function tappedAs(answers: Answers, track: PartId, input: PartId | undefined): Tapped {
  const heard = trackOf(answers, track)?.heard ?? [];
  const meant = input === undefined ? heard[0] : heard.find((one) => one.input === input);
  if (!meant) return { about: 'track', whose: null };
  const whose = subjectOf(meant);
  return { about: heard.length > 1 && input === undefined ? 'track' : whose, whose };
}

/**
 * One track: first what the tap on it was for, then who gets the pack. It stays with what was tapped at any place on
 * the line, until another is tapped, and says what does not apply there.
 */
export function TrackSheet({ track, input, from, onClose }: TrackProps) {
  const day = useDay().day.value;
  const [before, setBefore] = useState<string | undefined>(from);
  const [{ about, whose }, setTapped] = useState(() => tappedAs(answersBefore(day, from), track, input));
  const [openedAs] = useState(() => trackOf(answersBefore(day, from), track)?.state ?? 'empty');
  const answers = answersBefore(day, before);
  const answer = trackOf(answers, track);
  if (!answer) return null;
  const stands = whose ? subjectAt(answers, track, whose) : undefined;
  const pack = whose && 'pack' in whose ? whose.pack : null;
  const isOfTrack = about === 'track' || !stands;
  const means = meansOf(answer.state);
  const place = { before, onDone: onClose };
  return (
    <Sheet
      title={isOfTrack ? trackTitle(answer) : subjectTitle(day, about, stands)}
      under={[
        ofRecorder(day, answer.track),
        isOfTrack ? trackUnder(day, answer, before) : subjectUnder(day, answer, stands, before),
      ]
        .filter(Boolean)
        .join(' · ')}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <TrackFirst
        answer={answer}
        openedAs={openedAs}
        subject={isOfTrack ? null : { of: about, stands }}
        {...place}
      />
      <WhichVoice
        answer={answer}
        subject={whose}
        onChoose={(chosen) => setTapped({ about: isOfTrack ? 'track' : chosen, whose: chosen })}
      />
      <TrackActions
        answer={answer}
        subject={stands}
        whose={isOfTrack && stands ? nameOf(day, stands.voice) : ''}
        mic={!isOfTrack && stands?.voice ? { voice: stands.voice, transmitter: pack } : null}
        {...place}
      />
      {pack && <GiveList key={pack} transmitter={pack} {...place} />}
      {means && <p class="section-title soft">{means}</p>}
      <Because because={stands && !stands.heard ? (stands.path?.because ?? []) : answer.because} />
    </Sheet>
  );
}

interface WhichProps {
  readonly answer: TrackAnswer;
  readonly subject: Subject | null;
  readonly onChoose: (subject: Subject) => void;
}

/** Who is on the track there, if it is not just the subject: whose pack is given is another's by a tap alone. */
function WhichVoice({ answer, subject, onChoose }: WhichProps) {
  const day = useDay().day.value;
  if (answer.heard.every((one) => isSubject(subject, one))) return null;
  const isElsewhere = subject !== null && !answer.heard.some((one) => isSubject(subject, one));
  return (
    <>
      {isElsewhere && <p class="section-title soft">On track {answer.track.name} instead</p>}
      <div class="section buttons which-voice" role="group" aria-label="Which of them">
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
