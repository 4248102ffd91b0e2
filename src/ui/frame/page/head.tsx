import { effect, useComputed } from '@preact/signals';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type LiveState, liveState } from '../../../app/live/live-state.ts';
import type { Saving } from '../../../app/saving.ts';
import { answersNow } from '../../../day/answers/answers.ts';
import type { Day } from '../../../day/model.ts';
import { rollingNow } from '../../../day/recorders/rolling.ts';
import { rateNow, settingsNow } from '../../../day/settings/settings.ts';
import { Button } from '../../kit/button.tsx';
import { listOf } from '../../words/chain.ts';
import { rateWords } from '../../words/recording.ts';
import { useApp, useDay } from '../context.ts';
import { ClockFace } from './clock-face.tsx';
import { DimToggle } from './dim-toggle.tsx';
import { ClockSheet, DaySheet } from './sheets.ts';
import { SkipLink } from './skip-link.tsx';

const SAVING_WORD = { saving: 'saving', 'not-saved': 'NOT SAVED' } as const;
/** How well a saved day is backed up; a sample day needs no backup. */
const COPY_WORD = {
  none: ', not backed up',
  whole: ', backed up',
  older: ', backup out of date',
} as const;

/**
 * The day, its roll and rate, the running timecode, whether everything is saved, and the dark-set toggle. It is
 * kept low, since the rows are what the screen is for: a long title is cut, and whole in the sheet it opens.
 */
export function Head() {
  const store = useDay();
  const [open, setOpen] = useState<'day' | 'clock' | null>(null);
  const day = store.day.value;
  const { production, label, sample } = day.header;
  const { timecodeRate } = settingsNow(day);
  const { roll } = answersNow(day);
  // The days of one production differ by their label, so it comes before what may be cut.
  const title = [label, production].filter(Boolean).join(' · ') || 'Untitled day';
  const facts = [
    roll ? `roll ${roll}` : 'no roll',
    ...liveWords(liveState.value),
    rateWords(timecodeRate),
    ...rollingWords(day),
    ...(day.wrap ? ['wrapped'] : []),
  ];
  return (
    <header class="head">
      <SkipLink />
      <Button look="bare" class="head-day" onClick={() => setOpen('day')}>
        <span class="unseen">About this day: </span>
        <strong>{title}</strong>
        <span class="soft head-facts">
          {facts.map((fact, at) => [at > 0 && ' · ', <span key={fact}>{fact}</span>])}
        </span>
      </Button>
      <Button look="bare" class="head-clock" onClick={() => setOpen('clock')}>
        <span class="unseen">Sync to recorder: </span>
        <ClockFace />
        <State sample={sample} synced={syncWord(day)} />
      </Button>
      <DimToggle />
      {open === 'day' && <DaySheet onClose={() => setOpen(null)} />}
      {open === 'clock' && <ClockSheet onClose={() => setOpen(null)} />}
    </header>
  );
}

/** The counts show at once; the word comes a frame later, so on a fast disk it need not change at all. */
function State({ sample, synced }: { sample: boolean; synced: string }) {
  const { saving, copy, day } = useDay();
  const app = useApp();
  const { kept } = app.parts.journal.state;
  // Actions left by a closed window are on no disk, whatever has been saved since.
  const isHeld = app.unsaved.countOf(day.peek().id) > 0;
  const word = useRef<HTMLElement>(null);
  const state = useComputed(() => saving.value.state).value;
  useLayoutEffect(
    () =>
      effect(() => {
        Object.assign(word.current!.dataset, numbersOf(saving.value));
      }),
    [saving],
  );
  const isSaved = kept && state === 'saved' && !isHeld;
  const savedWord = sample ? 'sample' : 'saved';
  const savingWord = state === 'saved' ? (isHeld ? 'NOT ALL SAVED' : savedWord) : SAVING_WORD[state];
  return (
    <span class={isHeld || state === 'not-saved' ? 'head-state warn' : 'head-state soft'} ref={word}>
      <span>
        {kept ? savingWord : 'NOT KEPT'}
        {isSaved && !sample && <span class="head-more">{COPY_WORD[copy.value]}</span>}
        <span class={isSaved && !sample ? 'head-dot' : undefined}> ·</span>
      </span>{' '}
      <span>
        {day.value.clock === null && <span class="head-more">clock </span>}
        {synced}
      </span>
    </span>
  );
}

/** Nothing for a day that was never put live. */
const liveWords = (live: LiveState | null): string[] =>
  !live ? [] : [live.is === 'catching-up' ? `catching up ${live.left}` : live.is];

/** Which recorders roll, of a day with several. */
const rollingWords = (day: Day): string[] =>
  day.rig.recorders.length > 0 ? [`on ${listOf(rollingNow(day).map(({ name }) => name))}`] : [];

/** A clock synced at another rate runs on at the new one, but nobody has seen the recorder show that. */
function syncWord(day: Day): string {
  if (!day.clock) return 'not synced';
  return day.clock.rate === rateNow(day) ? 'synced' : 'sync again';
}

const numbersOf = ({ state, waiting }: Saving) => ({ saving: state, unsaved: String(waiting) });
