import { useEffect, useMemo, useState } from 'preact/hooks';
import { type Answers, answersAtTake, answersNow } from '../../day/answers/answers.ts';
import { audibleOn, heardTwice, type TrackAnswer } from '../../day/answers/track-answers.ts';
import type { VoiceAnswer } from '../../day/answers/voice-answers.ts';
import { trackLabels } from '../../day/files/track-labels.ts';
import { type Day, type PartId, TAPS, type TakeId, type VoiceId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { lastTake } from '../../day/takes.ts';
import { wordOf } from '../../shared/open-word.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { RollDock } from '../frame/page/roll-dock.tsx';
import { ConflictSheet, TakeSheet, TrackSheet, VoiceSheet } from '../frame/page/sheets.ts';
import { opensWith } from '../frame/route.ts';
import { lazy } from '../kit/lazy.tsx';
import type { MarkState } from '../kit/mark.tsx';
import { Row } from '../kit/row.tsx';
import { breakWords, listOf, mutedWords, nameOf, onTrackWords, pathWords } from '../words/chain.ts';
import { OpenTakes } from './open-takes.tsx';
import { SummaryLine } from './summary-line.tsx';

// Not needed once the day is under way.
const NoRig = lazy(() => import('./beginning.tsx').then((part) => part.NoRig));
const NextStep = lazy(() => import('./beginning.tsx').then((part) => part.NextStep));

const FreeSheet = lazy(() => import('./free-sheet.tsx').then((part) => part.FreeSheet));

type Open =
  | { readonly track: PartId; readonly input?: PartId }
  | { readonly voice: VoiceId }
  | { readonly take: TakeId }
  | 'free'
  | 'conflicts'
  | null;

/** The day's first screen: who is on which track now, what is wrong, and Roll. */
export function Now() {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(() => (opensWith.peek() === 'inputs' ? 'free' : null));
  useEffect(() => {
    opensWith.value = null;
  }, []);
  const answers = answersNow(day);
  const close = (): void => setOpen(null);
  return (
    <Page tab="now" foot={<RollDock />}>
      <h1 class="unseen">Now</h1>
      <OpenTakes onOpen={(take) => setOpen({ take })} />
      {day.rig.tracks.length === 0 ? (
        <NoRig onConflicts={() => setOpen('conflicts')} />
      ) : (
        <>
          <SummaryLine
            answers={answers}
            onTrack={(track) => setOpen({ track })}
            onVoice={(voice) => setOpen({ voice })}
            onFree={() => setOpen('free')}
            onConflicts={() => setOpen('conflicts')}
          />
          {day.takeOrder.length === 0 && <NextStep />}
          <Rows day={day} answers={answers} onOpen={setOpen} />
        </>
      )}
      {open === 'conflicts' && <ConflictSheet onClose={close} />}
      {open === 'free' && <FreeSheet onClose={close} onTrack={(track, input) => setOpen({ track, input })} />}
      {open && typeof open === 'object' && 'track' in open && (
        <TrackSheet track={open.track} input={open.input} onClose={close} />
      )}
      {open && typeof open === 'object' && 'voice' in open && (
        <VoiceSheet voice={open.voice} onClose={close} />
      )}
      {open && typeof open === 'object' && 'take' in open && (
        <TakeSheet item={day.takeItems.get(open.take)!} onClose={close} />
      )}
    </Page>
  );
}

interface RowsProps {
  readonly day: Day;
  readonly answers: Answers;
  readonly onOpen: (open: Open) => void;
}

/** Who is on which track. Most taps change nothing here: while the chain stands, so does the list. */
function Rows({ day, answers, onOpen }: RowsProps) {
  const since = changesSinceTake(day, answers);
  return useMemo(
    () => (
      <ul class="rows rows-two">
        {answers.summary.unrecorded.map((voice) => (
          <li key={voice}>
            <UnrecordedRow day={day} answers={answers} voice={voice} onTap={() => onOpen({ voice })} />
          </li>
        ))}
        {shownTracks(answers).map((answer) => (
          <li key={answer.track.id}>
            <TrackRow
              day={day}
              answer={answer}
              answers={answers}
              since={since.tracks.includes(answer.track.id) ? since.take : null}
              onTap={answer.state === 'mix' ? undefined : () => onOpen({ track: answer.track.id })}
            />
          </li>
        ))}
        <li key="free">
          <FreeRow answers={answers} onTap={() => onOpen('free')} />
        </li>
      </ul>
    ),
    [answers, since.take, since.tracks.join(' ')],
  );
}

/** The last take, and the tracks that had somebody else then; no take if there are none. */
function changesSinceTake(day: Day, answers: Answers): { take: string; tracks: readonly PartId[] } {
  const last = lastTake(day);
  const then = last && answersAtTake(day, last.id);
  if (!then || then === answers) return NO_CHANGES;
  const tracks = answers.tracks
    .filter(
      ({ track, name }) =>
        !track.mix && then.tracks.some((one) => one.track.id === track.id && one.name !== name),
    )
    .map(({ track }) => track.id);
  return tracks.length === 0 ? NO_CHANGES : { take: takeText(last), tracks };
}

const NO_CHANGES = { take: '', tracks: [] };

const shownTracks = ({ tracks }: Answers): TrackAnswer[] => tracks.filter(({ state }) => state !== 'empty');

interface TrackRowProps {
  readonly day: Day;
  readonly answer: TrackAnswer;
  readonly answers: Answers;
  /** The last take, if somebody else was on this track then. */
  readonly since: string | null;
  readonly onTap: (() => void) | undefined;
}

function TrackRow({ day, answer, answers, since, onTap }: TrackRowProps) {
  const { track, state } = answer;
  const voices = answer.heard.map(({ voice }) => answers.voices.find((one) => one.voice.id === voice));
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
      word={<TrackWord answer={answer} quiet={quiet} since={since} />}
      onTap={onTap}
    />
  );
}

function TrackWord({ answer, quiet, since }: { answer: TrackAnswer; quiet: string[]; since: string | null }) {
  if (answer.state === 'clash') {
    return (
      <>
        <strong>clash</strong>not on purpose
      </>
    );
  }
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

function FreeRow({ answers, onTap }: { answers: Answers; onTap: () => void }) {
  const free = answers.inputs.filter(({ state }) => state === 'free').map(({ input }) => input.name);
  const idle = answers.inputs.filter(({ state }) => state === 'idle').map(({ input }) => input.name);
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
