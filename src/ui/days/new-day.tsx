import { lightFormat } from 'date-fns/lightFormat';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import { describeDay, headAfter, isSameProduction, newDayHead } from '../../app/commands/day.ts';
import { type HeaderFields, TIMECODE_RATES } from '../../day/model.ts';
import { useApp } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { goTo } from '../frame/route.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { titleOf } from '../words/day-outline.ts';

/** Defaults from the day before; an unreadable day offers none. */
const proposed = async (app: AppStore, latest: string | undefined): Promise<HeaderFields> => {
  if (latest === undefined) return {};
  return app.headOf(latest).then(headAfter, () => ({}));
};

/** A new day asks only for what it cannot do without; everything can be changed later. */
export function NewDay({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const latest = app.days.value.find(({ sample }) => !sample);
  const proposal = useMemo(() => proposed(app, latest?.id), [app, latest?.id]);
  const [crew, setCrew] = useState<HeaderFields>({});
  const [said, setSaid] = useState<HeaderFields>(() => ({
    date: lightFormat(app.parts.clock.now().atMs, 'yyyy-MM-dd'),
  }));
  useEffect(() => void proposal.then(setCrew), [proposal]);
  const { production = '', label = '', date = '', timecodeRate = '25' } = newDayHead(crew, said);
  const starting = useRef(false);
  const set = (fields: HeaderFields): void => setSaid({ ...said, ...fields });
  const start = async (): Promise<void> => {
    // A second tap meanwhile would start a second day.
    if (starting.current) return;
    starting.current = true;
    const shown = { production, label, date, timecodeRate };
    const result = await app.start(describeDay(newDayHead(await proposal, shown)));
    if (result.ok) return goTo({ at: 'day', day: result.value, tab: 'rig' });
    starting.current = false;
    complain(result.problem);
  };
  return (
    <Sheet
      title="New day"
      under="Everything else can be set later."
      onClose={onClose}
      foot={
        <Button look="solid" onClick={() => void start()}>
          Start the day
        </Button>
      }
    >
      <div class="section">
        <TextField
          label="Production"
          value={production}
          onInput={(value) => set({ production: value })}
          capitals="words"
        />
        <div class="field-pair">
          <TextField label="Day" value={label} onInput={(value) => set({ label: value })} capitals="words" />
          <TextField label="Date" type="date" value={date} onInput={(value) => set({ date: value })} />
        </div>
        <Choice
          label="Timecode rate"
          value={timecodeRate}
          options={TIMECODE_RATES.map((value) => ({ value, name: value.replace('DF', ' DF') }))}
          onChoose={(value) => set({ timecodeRate: value })}
        />
        {latest && (
          <p class="soft">
            {isSameProduction(crew, said)
              ? `Crew, recorder and settings are copied from ${titleOf(latest)}; all of it can be changed.`
              : `Another production: no crew, recorder or settings are copied from ${titleOf(latest)}.`}
          </p>
        )}
      </div>
    </Sheet>
  );
}
