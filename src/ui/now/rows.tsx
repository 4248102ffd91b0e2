import { useMemo } from 'preact/hooks';
import { type Answers, answersAtTake } from '../../day/answers/answers.ts';
import type { RecorderAnswers } from '../../day/answers/recorder-answers.ts';
import { audibleOn, heardTwice, type TrackAnswer } from '../../day/answers/track-answers.ts';
import { isHeard, type VoiceAnswer } from '../../day/answers/voice-answers.ts';
import { trackLabels } from '../../day/files/track-labels.ts';
import { type Day, type PartId, TAPS, type VoiceId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { lastTake } from '../../day/takes.ts';
import { wordOf } from '../../shared/open-word.ts';
import type { MarkState } from '../kit/mark.tsx';
import { Row } from '../kit/row.tsx';
import { breakWords, listOf, mutedWords, nameOf, onTrackWords, pathWords } from '../words/chain.ts';
import { isHeardBy, nameWithRecorder, notOnWords } from '../words/recorder-names.ts';

interface RowsProps {
  readonly day: Day;
  readonly answers: Answers;
  /** The recorders that roll, and the one of them whose rows are shown. */
  readonly rigs: readonly RecorderAnswers[];
  readonly shown: RecorderAnswers;
  readonly onOpen: (open: { track: PartId } | { voice: VoiceId } | 'free') => void;
}

/** Who is on which track of a recorder. Most taps change nothing here: while the chain stands, so does the list. */
export function Rows({ day, answers, rigs, shown, onOpen }: RowsProps) {
  const since = changesSinceTake(day, answers, shown);
  return useMemo(
    () => (
      <ul class="rows rows-two">
        {answers.summary.unrecorded.map((voice) => (
          <li key={voice}>
            <UnrecordedRow day={day} answers={answers} voice={voice} onTap={() => onOpen({ voice })} />
          </li>
        ))}
        {onlyElsewhere(answers, shown).map((voice) => (
          <li key={voice.voice.id}>
            <ElsewhereRow
              day={day}
              answer={voice}
              rigs={rigs}
              onTap={() => onOpen({ voice: voice.voice.id })}
            />
          </li>
        ))}
        {shownTracks(shown).map((answer) => (
          <li key={answer.track.id}>
            <TrackRow
              day={day}
              answer={answer}
              shown={shown}
              notOn={
                rigs.length > 1
                  ? notOnWords(
                      day,
                      rigs,
                      audibleOn(answer).map(({ voice }) => voice),
                    )
                  : ''
              }
              since={since.tracks.includes(answer.track.id) ? since.take : null}
              onTap={answer.state === 'mix' ? undefined : () => onOpen({ track: answer.track.id })}
            />
          </li>
        ))}
        <li key="free">
          <FreeRow inputs={shown.inputs} onTap={() => onOpen('free')} />
        </li>
      </ul>
    ),
    [answers, shown, since.take, since.tracks.join(' ')],
  );
}

/** The last take, and the tracks that had somebody else then; no take if there are none. */
function changesSinceTake(
  day: Day,
  answers: Answers,
  shown: RecorderAnswers,
): { take: string; tracks: readonly PartId[] } {
  const last = lastTake(day);
  const then = last && answersAtTake(day, last.id);
  if (!then || then === answers) return NO_CHANGES;
  // On a recorder that did not roll then everybody is new, which says nothing.
  if (!then.recorders.some(({ recorder, rolls }) => rolls && recorder === shown.recorder)) return NO_CHANGES;
  const tracks = shown.tracks
    .filter(
      ({ track, name }) =>
        !track.mix && then.tracks.some((one) => one.track.id === track.id && one.name !== name),
    )
    .map(({ track }) => track.id);
  return tracks.length === 0 ? NO_CHANGES : { take: takeText(last), tracks };
}

const NO_CHANGES = { take: '', tracks: [] };

const shownTracks = ({ tracks }: RecorderAnswers): TrackAnswer[] =>
  tracks.filter(({ state }) => state !== 'empty');

interface TrackRowProps {
  readonly day: Day;
  readonly answer: TrackAnswer;
  readonly shown: RecorderAnswers;
  /** The recorders that roll and do not get who is on it. */
  readonly notOn: string;
  /** The last take, if somebody else was on this track then. */
  readonly since: string | null;
  readonly onTap: (() => void) | undefined;
}

function TrackRow({ day, answer, shown, notOn, since, onTap }: TrackRowProps) {
  const { track, state } = answer;
  const voices = answer.heard.map(({ voice }) => shown.voices.find((one) => one.voice.id === voice));
  const number = trackLabels(day.rig).get(track.id) ?? track.name;
  const mark: MarkState = state === 'empty' ? 'free' : state;
  const quiet = answer.heard.filter(({ muted }) => muted).map(({ voice }) => nameOf(day, voice));
  const fader = `${wordOf(TAPS, track.tap ?? 'post')} fader`;
  return (
    <Row
      number={number}
      mark={mark}
      title={onTrackWords(answer, number) || 'nobody'}
      under={state === 'mix' ? fader : underTrack(day, answer, voices)}
      word={<TrackWord answer={answer} quiet={quiet} notOn={notOn} since={since} />}
      onTap={onTap}
    />
  );
}

interface WordProps extends Pick<TrackRowProps, 'answer' | 'notOn' | 'since'> {
  readonly quiet: readonly string[];
}

function TrackWord({ answer, quiet, notOn, since }: WordProps) {
  if (answer.state === 'clash') {
    return (
      <>
        <strong>clash</strong>not on purpose
      </>
    );
  }
  if (notOn) return <strong>{notOn}</strong>;
  if (answer.state === 'gang')
    return <>gang of {new Set(audibleOn(answer).map(({ voice }) => voice)).size}</>;
  if (answer.state === 'muted') return <>muted</>;
  if (answer.typed) return <>own name</>;
  if (heardTwice(answer).length > 0) return <>twice</>;
  if (quiet.length > 0) return <>{listOf(quiet)} muted</>;
  if (since === null) return null;
  return (
    <>
      <strong>new since</strong>
      {since}
    </>
  );
}

function underTrack(day: Day, { heard }: TrackAnswer, voices: readonly (VoiceAnswer | undefined)[]): string {
  const paths = heard.flatMap(
    ({ source }, at) => voices[at]?.paths.find((path) => path.source === source.id) ?? [],
  );
  return paths.map((path) => pathWords(day.rig, path)).join(' + ');
}

/** Those whom another recorder hears, and the one shown does not. */
const onlyElsewhere = ({ voices }: Answers, shown: RecorderAnswers): VoiceAnswer[] =>
  voices.filter((answer) => isHeard(answer) && !isHeardBy(shown, answer.voice.id));

interface ElsewhereProps {
  readonly day: Day;
  readonly answer: VoiceAnswer;
  readonly rigs: readonly RecorderAnswers[];
  readonly onTap: () => void;
}

function ElsewhereRow({ day, answer, rigs, onTap }: ElsewhereProps) {
  return (
    <Row
      number="–"
      mark="broken"
      title={nameOf(day, answer.voice.id)}
      under={`on ${listOf(answer.tracks.map((id) => nameWithRecorder(day, id)))}`}
      word={<strong>{notOnWords(day, rigs, [answer.voice.id])}</strong>}
      onTap={onTap}
    />
  );
}

interface UnrecordedProps {
  readonly day: Day;
  readonly answers: Answers;
  readonly voice: VoiceId;
  readonly onTap: () => void;
}

function UnrecordedRow({ day, answers, voice, onTap }: UnrecordedProps) {
  const answer = answers.voices.find((one) => one.voice.id === voice);
  const path = answer?.paths.find(({ broken }) => broken) ?? answer?.paths[0];
  const isMuted = answer?.state === 'muted';
  return (
    <Row
      number="–"
      mark={isMuted ? 'muted' : 'broken'}
      title={nameOf(day, voice)}
      under={isMuted ? mutedWords(day.rig, answers.tracks, voice) : path && breakWords(day.rig, path)}
      word={<strong>not recorded</strong>}
      onTap={onTap}
    />
  );
}

function FreeRow({ inputs, onTap }: { inputs: RecorderAnswers['inputs']; onTap: () => void }) {
  const free = inputs.filter(({ state }) => state === 'free').map(({ input }) => input.name);
  const idle = inputs.filter(({ state }) => state === 'idle').map(({ input }) => input.name);
  return (
    <Row
      number=""
      mark={free.length > 0 ? 'free' : 'idle'}
      title={free.length > 0 ? free.join(', ') : 'No input free'}
      under={
        free.length > 0
          ? 'nothing reaches them'
          : idle.length > 0
            ? `idle: ${idle.join(', ')}`
            : 'every input is in use'
      }
      word={`free ${free.length}`}
      onTap={onTap}
    />
  );
}
