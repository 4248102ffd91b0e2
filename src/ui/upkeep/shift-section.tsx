import { useState } from 'preact/hooks';
import { planShift } from '../../app/commands/upkeep.ts';
import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import { useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { Section } from '../kit/section.tsx';
import { clockTime } from '../words/times.ts';
import { clockOf } from './words.ts';

/** Call, meal break and wrap: how long cells and cards must last. */
export function ShiftSection({ day, now }: { day: Day; now: Moment }) {
  const run = useRun();
  const { callAtMs, mealAtMs, wrapAtMs } = day.upkeep.shift;
  const clock = (ms: number | null | undefined): string => (ms ? clockTime(ms, now.zone) : '');
  const [typed, setTyped] = useState({
    call: clock(callAtMs),
    meal: clock(mealAtMs),
    wrap: clock(wrapAtMs),
  });
  const words = [
    ['call', callAtMs],
    ['meal', mealAtMs],
    ['wrap', wrapAtMs],
  ] as const;
  const said = words.flatMap(([name, ms]) => (ms ? `${name} ${clockOf(ms, now.zone, now.atMs)}` : []));
  return (
    <Section name="Hours of the day" under={said.join(', ') || 'not set: no meal or wrap warnings'}>
      <form
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          run(planShift(typed), 'Hours of the day saved');
        }}
      >
        <div class="shift-fields">
          {(['call', 'meal', 'wrap'] as const).map((field) => (
            <TextField
              key={field}
              label={field === 'meal' ? 'Meal break' : field === 'call' ? 'Call' : 'Wrap'}
              value={typed[field]}
              onInput={(value) => setTyped({ ...typed, [field]: value })}
              inputMode="numeric"
              placeholder={field === 'call' ? '07:00' : field === 'meal' ? '13:00' : '19:00'}
            />
          ))}
        </div>
        <Button look="solid" type="submit">
          Save
        </Button>
      </form>
    </Section>
  );
}
