import type { Answers } from '../../day/answers/answers.ts';
import type { RecorderAnswers } from '../../day/answers/recorder-answers.ts';
import { rolledTracks } from '../../day/answers/rolled-parts.ts';
import { isHeard } from '../../day/answers/voice-answers.ts';
import type { Day, PartId, VoiceId } from '../../day/model.ts';
import { conflictsOf } from '../../day/phones/conflicts.ts';
import { useDay } from '../frame/context.ts';
import { undoLast } from '../frame/undo.ts';
import { useWorkedOut } from '../kit/after-next-paint.ts';
import { Button } from '../kit/button.tsx';
import { lazy } from '../kit/lazy.tsx';
import { countOf, listOf, nameOf } from '../words/chain.ts';
import { isHeardBy, recorderName, rollingRigs } from '../words/recorder-names.ts';
import { claimWords } from './claim-words.ts';
import { countsOf } from './counts.ts';

// Only few days have several.
const ShowRecorder = lazy(() => import('./show-recorder.tsx').then((part) => part.ShowRecorder));

interface SummaryProps {
  readonly answers: Answers;
  /** The recorder whose counts are shown. What is wrong is said of all that roll. */
  readonly shown: RecorderAnswers;
  /** Shows the next of the recorders that roll, where several do. */
  readonly onShow: (() => void) | undefined;
  readonly onTrack: (track: PartId) => void;
  readonly onVoice: (voice: VoiceId) => void;
  readonly onFree: () => void;
  readonly onConflicts: () => void;
}

/** How many conflicts there are between phones, one tap from resolving them; nothing if there are none. */
export function useConflictButton(onTap: () => void) {
  // Searches the whole line of a day shared by several phones, which is half the work of a tap.
  const count = useWorkedOut(useDay().day.value, (day: Day) => conflictsOf(day).length);
  return count > 0 ? (
    <Button key="contradictions" look="plain" class="warn" onClick={onTap}>
      {countOf(count, 'conflict')}
    </Button>
  ) : null;
}

/** The summary line: problems come first, one tap from where they are; at its end the way back. */
export function SummaryLine({ answers, shown, onShow, onTrack, onVoice, onFree, onConflicts }: SummaryProps) {
  const store = useDay();
  const day = store.day.value;
  const { summary } = answers;
  const rigs = rollingRigs(answers);
  const clash = rolledTracks(answers).find(({ state }) => state === 'clash');
  const lost = summary.unrecorded;
  const troubles = [
    lost.length > 0 && (
      <Button key="lost" look="plain" class="warn" onClick={() => onVoice(lost[0]!)}>
        {lost.length < 3 ? listOf(lost.map((id) => nameOf(day, id))) : countOf(lost.length, 'voice')} not
        recorded
      </Button>
    ),
    summary.clashes > 0 && (
      // If two meet on an input that feeds no track, the list of inputs shows it.
      <Button
        key="clash"
        look="plain"
        class="warn"
        onClick={() => (clash ? onTrack(clash.track.id) : onFree())}
      >
        {countOf(summary.clashes, 'clash', 'clashes')}
      </Button>
    ),
    useConflictButton(onConflicts),
  ].filter(Boolean);
  // Beside the switch there is no room for all of it, and the rows below are what the screen is for: isos and what is free.
  const isTight = onShow && troubles.length > 0;
  const counts = countsOf(shown.summary).slice(isTight ? 1 : 0, isTight ? 3 : undefined);
  return (
    <div class={isTight ? 'summary summary-tight' : 'summary'}>
      <div class="summary-words">
        {troubles}
        <Button look="bare" class="summary-rest" onClick={onFree}>
          {counts.map(([count, words], at) => (
            <>
              {at > 0 && ' · '}
              <b>{count}</b> {words}
            </>
          ))}
          {troubles.length === 0 && claimWords(answers)}
          {rigs.length > 1 &&
            !isTight &&
            missedWords(
              day,
              answers,
              rigs.filter((rig) => rig !== shown),
            )}
        </Button>
      </div>
      {onShow && <ShowRecorder answers={answers} shown={shown} onTap={onShow} />}
      {store.canUndo.value && (
        <Button look="plain" class="summary-undo" onClick={() => undoLast(store)}>
          Undo
        </Button>
      )}
    </div>
  );
}

/** ` · 2 not on Bag`: how many the others do not get; whom the one shown does not get stands in its rows. */
function missedWords(day: Day, { voices }: Answers, others: readonly RecorderAnswers[]): string {
  const heard = voices.filter(isHeard);
  return others
    .map((rig) => ({ rig, missed: heard.filter(({ voice }) => !isHeardBy(rig, voice.id)).length }))
    .filter(({ missed }) => missed > 0)
    .map(({ rig, missed }) => ` · ${missed} not on ${recorderName(day, rig.recorder)}`)
    .join('');
}
