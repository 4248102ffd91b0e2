import { useState } from 'preact/hooks';
import { followHeard } from '../../../app/commands/hearing.ts';
import type { Ear } from '../../../app/ear/ear.ts';
import { type HeardAt, keptDelay } from '../../../app/ear/path-delay.ts';
import { rateNow, settingsNow } from '../../../day/settings/settings.ts';
import type { Heard } from '../../../ltc/measure/listening.ts';
import { type Tie, tieTo } from '../../../ltc/measure/tie.ts';
import { addFrames, formatTimecode, msToFrames } from '../../../time/timecode.ts';
import { Button } from '../../kit/button.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { hearingSentence, msWords } from '../../words/hearing.ts';
import { rateWords } from '../../words/recording.ts';
import { useDay, useRun } from '../context.ts';
import { dayBeside } from './day-beside.ts';
import { DelayForm } from './delay-form.tsx';
import { HeardFigures, HeardTime } from './heard-reading.tsx';
import { LeadsNote } from './leads-note.tsx';
import { useEar } from './use-ear.ts';

/** Listens to timecode and ties the phone's clock to it. */
export function HearSheet({ onClose }: { onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const { now, listen } = useEar();
  const [delay, setDelay] = useState(keptDelay);
  const heard = now.is === 'on' ? now.state?.heard : undefined;
  const tie = heard && tieTo(heard);
  const { timecodeRate } = settingsNow(store.day.value);
  const isDaysRate = tie?.ok === true && tie.value.rate === rateNow(store.day.value);

  const follow = (ear: Ear, { frames, rate, heard: count, start, spread }: Tie): void => {
    const heardMs = ear.msAt(start);
    if (heardMs === undefined) return;
    const passedMs = performance.now() - heardMs + (delay?.ms ?? 0);
    const spreadMs = (spread / ear.sampleRate) * 1000 + ear.doubtMs();
    const command = followHeard({
      frames,
      rate,
      atMs: store.clock.now().atMs - passedMs,
      heard: { frames: count, spreadMs, ...(delay && { delayMs: delay.ms }) },
    });
    const shown = addFrames(frames, msToFrames(Math.max(0, passedMs), rate), rate);
    if (
      run(
        command,
        `Synced by ear at ${formatTimecode(shown, rate)}, within ${msWords(spreadMs)}${delay ? '' : ' and the unknown delay of this phone'}`,
      )
    )
      onClose();
  };

  return (
    <Sheet
      title="Hear timecode"
      under={`The day is at ${rateWords(timecodeRate)}.`}
      onClose={onClose}
      foot={
        now.is === 'on' ? (
          <Button
            look="solid"
            class="tap-now"
            disabled={!isDaysRate}
            onClick={() => tie?.ok && follow(now.ear, tie.value)}
          >
            {footWords(heard, isDaysRate)}
          </Button>
        ) : (
          <Button look="solid" class="tap-now" disabled={now.is === 'opening'} onClick={listen}>
            {now.is === 'opening' ? 'Asking for the microphone' : 'Listen'}
          </Button>
        )
      }
    >
      {now.is === 'on' ? (
        <>
          <HeardTime state={now.state} beside={dayBeside(store)} />
          <HeardFigures state={now.state} />
          <DelayForm heardNow={() => heardAt(now.ear, heard)} delay={delay} onDelay={setDelay} />
        </>
      ) : (
        <p class="section">
          Listen asks for the microphone. The timecode is read on this phone; sound is never kept and never
          sent. It works with no signal.
        </p>
      )}
      <LeadsNote />
    </Sheet>
  );
}

function footWords(heard: Heard | undefined, isDaysRate: boolean): string {
  if (!heard) return 'No timecode yet';
  const tie = tieTo(heard);
  if (!tie.ok) return hearingSentence(tie.problem);
  return isDaysRate ? 'Sync to this' : 'Not the rate of the day';
}

function heardAt(ear: Ear, heard: Heard | undefined): HeardAt | undefined {
  const tie = heard && tieTo(heard);
  const atMs = tie?.ok ? ear.msAt(tie.value.start) : undefined;
  return tie?.ok && atMs !== undefined ? { frames: tie.value.frames, rate: tie.value.rate, atMs } : undefined;
}
