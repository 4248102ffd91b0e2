import { useEffect, useMemo, useState } from 'preact/hooks';
import { type Answers, answersAtTake, answersNow } from '../../day/answers.ts';
import type { Day, PartId, VoiceId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { lastTake } from '../../day/takes.ts';
import type { TrackAnswer } from '../../day/track-answers.ts';
import { useDay } from '../context.ts';
import type { MarkState } from '../parts/mark.tsx';
import { Page } from '../parts/page.tsx';
import { RollDock } from '../parts/roll-dock.tsx';
import { Row } from '../parts/row.tsx';
import { conflictButton, SummaryLine } from '../parts/summary-line.tsx';
import { hrefOf, opensWith } from '../route.ts';
import { ConflictSheet, FreeSheet, TrackSheet, VoiceSheet } from '../sheets.ts';
import { breakWords, countOf, listOf, nameOf, pathWords } from '../words/chain.ts';

type Open = { readonly track: PartId } | { readonly voice: VoiceId } | 'free' | 'conflicts' | null;

/** The day's first screen: who is on which track now, what is wrong, and Roll. */
export function Now() {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(() => (opensWith.peek() ? 'free' : null));
  useEffect(() => {
    opensWith.value = null;
  }, []);
  const answers = answersNow(day);
  const close = (): void => setOpen(null);
  return (
    <Page tab="now" foot={<RollDock />}>
      <h1 class="unseen">Now</h1>
      {day.rig.tracks.length === 0 ? (
        <NoRig day={day} onConflicts={() => setOpen('conflicts')} />
      ) : (
        <>
          <SummaryLine
            answers={answers}
            onTrack={(track) => setOpen({ track })}
            onVoice={(voice) => setOpen({ voice })}
            onFree={() => setOpen('free')}
            onConflicts={() => setOpen('conflicts')}
          />
          {day.takeOrder.length === 0 && <NextStep day={day} answers={answers} />}
          <Rows day={day} answers={answers} onOpen={setOpen} />
        </>
      )}
      {open === 'conflicts' && <ConflictSheet onClose={close} />}
      {open === 'free' && <FreeSheet onClose={close} onTrack={(track) => setOpen({ track })} />}
      {open && typeof open === 'object' && 'track' in open && (
        <TrackSheet track={open.track} onClose={close} />
      )}
      {open && typeof open === 'object' && 'voice' in open && (
        <VoiceSheet voice={open.voice} onClose={close} />
      )}
    </Page>
  );
}

interface RowsProps {
  readonly day: Day;
  readonly answers: Answers;
  readonly onOpen: (open: Open) => void;
}

/** Who is on which track. Most taps change nothing here: while the chain and the last take stand, so does the list. */
function Rows({ day, answers, onOpen }: RowsProps) {
  const last = lastTake(day);
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
              onTap={answer.state === 'mix' ? undefined : () => onOpen({ track: answer.track.id })}
            />
          </li>
        ))}
        <li>
          <FreeRow answers={answers} onTap={() => onOpen('free')} />
        </li>
      </ul>
    ),
    [answers, last?.id, last && takeText(last), last && answersAtTake(day, last.id)],
  );
}

const shownTracks = ({ tracks }: Answers): TrackAnswer[] => tracks.filter(({ state }) => state !== 'empty');

function NoRig({ day, onConflicts }: { day: Day; onConflicts: () => void }) {
  return (
    <div class="section empty">
      {conflictButton(day, onConflicts)}
      <p>
        <strong>No rig yet.</strong> Say what the recorder has, and this screen shows who is on which track.
      </p>
      <a class="button button-solid as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'rig' })}>
        Lay the rig
      </a>
    </div>
  );
}

/** Before the first take: who is still to be said, or to be given a pack. Who works with booms alone rolls, and is not asked again. */
function NextStep({ day, answers }: { day: Day; answers: Answers }) {
  const performers = answers.voices.filter(({ voice }) => voice.kind === 'performer');
  const bare = performers.filter(({ state }) => state === 'off').length;
  if (performers.length > 0 && bare === 0) return null;
  return (
    <div class="section empty">
      <p>
        <strong>{bare === 0 ? 'No performers yet.' : `${countOf(bare, 'performer')} without a pack.`}</strong>{' '}
        {bare === 0 && 'Say who is recorded; then a'}
        {bare > 0 && 'On Cast, a'} tap on a name gives it a pack.
      </p>
      <a class="button button-solid as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'cast' })}>
        {bare === 0 ? 'Add the cast' : 'Give packs'}
      </a>
    </div>
  );
}

interface TrackRowProps {
  readonly day: Day;
  readonly answer: TrackAnswer;
  readonly answers: Answers;
  readonly onTap: (() => void) | undefined;
}

function TrackRow({ day, answer, answers, onTap }: TrackRowProps) {
  const { track, state } = answer;
  const since = changedSince(day, answer);
  const mark: MarkState = state === 'empty' ? 'free' : state;
  const number = track.mix && !/^\d+$/.test(track.name) ? String(track.order + 1) : track.name;
  const quiet = answer.heard.filter(({ muted }) => muted).map(({ voice }) => nameOf(day, voice));
  return (
    <Row
      number={number}
      mark={mark}
      title={answer.name || 'nobody'}
      under={
        state === 'mix' ? `${track.tap === 'pre' ? 'pre' : 'post'} fader` : underTrack(day, answer, answers)
      }
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
  if (answer.state === 'gang') return <>gang of {answer.heard.filter(({ muted }) => !muted).length}</>;
  if (answer.state === 'muted') return <>muted</>;
  if (answer.typed) return <>name typed by hand</>;
  if (quiet.length > 0) return <>{listOf(quiet)} muted</>;
  if (since === null) return null;
  return (
    <>
      <strong>new since</strong>
      {since}
    </>
  );
}

function underTrack(day: Day, answer: TrackAnswer, answers: Answers): string {
  const paths = answer.heard.flatMap(({ voice, source }) => {
    const of = answers.voices.find((one) => one.voice.id === voice);
    return of?.paths.find((path) => path.source === source.id) ?? [];
  });
  return paths.map((path) => pathWords(day.rig, path)).join(' + ');
}

/** The last take, if somebody else was on this track then. */
function changedSince(day: Day, answer: TrackAnswer): string | null {
  const last = lastTake(day);
  if (!last || answer.track.mix) return null;
  const then = answersAtTake(day, last.id).tracks.find(({ track }) => track.id === answer.track.id);
  return then && then.name !== answer.name ? takeText(last) : null;
}

interface UnrecordedProps {
  readonly day: Day;
  readonly answers: Answers;
  readonly voice: VoiceId;
  readonly onTap: () => void;
}

function UnrecordedRow({ day, answers, voice, onTap }: UnrecordedProps) {
  const path = answers.voices.find((one) => one.voice.id === voice)?.paths[0];
  return (
    <Row
      number="–"
      mark="broken"
      title={nameOf(day, voice)}
      under={path && breakWords(day.rig, path)}
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
