import { useEffect, useState } from 'preact/hooks';
import { clockFor, followClock } from '../../../app/commands/takes.ts';
import { rateNow, settingsNow } from '../../../day/settings/settings.ts';
import { nextWholeSecond, timeOfDayClock } from '../../../time/followed-clock.ts';
import { type RateId, rateOf } from '../../../time/rate.ts';
import { addFrames, formatTimecode, parseTimecode } from '../../../time/timecode.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { lazy } from '../../kit/lazy.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { sentenceFor } from '../../words/problems.ts';
import { rateWords } from '../../words/recording.ts';
import { useDay, useRun } from '../context.ts';
import { complain } from '../messages.ts';

const HearSheet = lazy(() => import('../hearing/hear-sheet.tsx').then((part) => part.HearSheet));

const LEAD_MS = 4000;
const STEPS = [
  { name: '− 1 h', seconds: -3600 },
  { name: '− 1 min', seconds: -60 },
  { name: '− 1 s', seconds: -1 },
  { name: '+ 1 s', seconds: 1 },
  { name: '+ 1 min', seconds: 60 },
  { name: '+ 1 h', seconds: 3600 },
] as const;

/** Ties the phone's clock to the recorder's timecode, at a rate this version can count. */
export function ClockSheet({ onClose }: { onClose: () => void }) {
  const { value: day } = useDay().day;
  const rate = rateNow(day);
  const [hears, setHears] = useState(false);
  const { timecodeRate } = settingsNow(day);
  if (rate && hears) return <HearSheet onClose={onClose} />;
  if (rate) return <FollowSheet rate={rate} onHear={() => setHears(true)} onClose={onClose} />;
  return (
    <Sheet
      title="Sync to recorder"
      under={`${rateWords(timecodeRate)}, set in the day details.`}
      onClose={onClose}
    >
      <p class="section">{sentenceFor({ code: 'rate-unknown', timecodeRate })}</p>
    </Sheet>
  );
}

/** One tap when the recorder shows the named whole second. */
function FollowSheet({ rate, onHear, onClose }: { rate: RateId; onHear: () => void; onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const { clock } = store;
  const [target, setTarget] = useState(() => {
    const now = clock.now();
    return nextWholeSecond(
      { ...(clockFor(store.day.peek(), now) ?? timeOfDayClock(now.atMs, now.zone, rate)), rate },
      now.atMs,
      LEAD_MS,
    ).frames;
  });
  const [typed, setTyped] = useState('');

  // The offered second moves on when the mixer lets it pass, unless one was typed or stepped to.
  const [own, setOwn] = useState(false);
  useEffect(() => {
    if (own) return;
    const timer = setInterval(() => {
      const now = clock.now();
      setTarget(
        nextWholeSecond(
          { ...(clockFor(store.day.peek(), now) ?? timeOfDayClock(now.atMs, now.zone, rate)), rate },
          now.atMs,
          LEAD_MS,
        ).frames,
      );
    }, LEAD_MS);
    return () => clearInterval(timer);
  }, [own, clock, store, rate]);

  const step = (seconds: number): void => {
    setOwn(true);
    setTarget(addFrames(target, seconds * rateOf(rate).base, rate));
  };
  const type = (): void => {
    const read = parseTimecode(typed, rate);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    setOwn(true);
    setTarget(read.value);
    setTyped('');
  };
  const follow = (): void => {
    if (run(followClock(target), `Synced at ${formatTimecode(target, rate)}`)) onClose();
  };

  return (
    <Sheet
      title="Sync to recorder"
      under={`Tap the moment the recorder shows this timecode. ${rateWords(settingsNow(store.day.value).timecodeRate)}, set in the day details.`}
      onClose={onClose}
      foot={
        <Button look="solid" class="tap-now" onClick={follow}>
          Tap when it reads
          <strong class="mono">{formatTimecode(target, rate)}</strong>
        </Button>
      }
    >
      <div class="section">
        <div class="buttons">
          <Button onClick={onHear}>Hear timecode</Button>
        </div>
      </div>
      <div class="section">
        <div class="steps">
          {STEPS.map(({ name, seconds }) => (
            <Button key={name} onClick={() => step(seconds)}>
              {name}
            </Button>
          ))}
        </div>
      </div>
      <form
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          type();
        }}
      >
        <TextField
          label="Or type another timecode"
          value={typed}
          onInput={setTyped}
          inputMode="numeric"
          placeholder="21:32:10"
        />
        <Button type="submit">Use this timecode</Button>
      </form>
    </Sheet>
  );
}
