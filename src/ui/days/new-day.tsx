import { lightFormat } from 'date-fns/lightFormat';
import { useState } from 'preact/hooks';
import { describeDay } from '../../commands/describe.ts';
import { nextLabel } from '../../commands/start-day.ts';
import type { Header } from '../../day/model.ts';
import { type HeaderFields, TIMECODE_RATES } from '../../facts/day-described.ts';
import { useApp } from '../context.ts';
import { Choice, TextField } from '../parts/field.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { goTo } from '../route.ts';
import { complain } from '../saying.ts';

/** Crew, recorder and settings go on from day to day; what is said of the day itself does not. */
function crewOf(head: Header): HeaderFields {
  const {
    production: _production,
    label: _label,
    date: _date,
    sample: _sample,
    remarks: _remarks,
    ...crew
  } = head;
  return crew;
}

/** A new day: only what it cannot do without, and all of it can be said later. */
export function NewDay({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const latest = app.days.value.find(({ sample }) => !sample);
  const [production, setProduction] = useState(latest?.production ?? '');
  const [label, setLabel] = useState(latest ? nextLabel(latest.label) : 'Day 1');
  const [date, setDate] = useState(() => lightFormat(app.parts.clock.now().atMs, 'yyyy-MM-dd'));
  const [timecodeRate, setRate] = useState<(typeof TIMECODE_RATES)[number]>('25');
  const start = async (): Promise<void> => {
    const crew = latest ? crewOf(await app.headOf(latest.id)) : {};
    const result = await app.start(describeDay({ ...crew, production, label, date, timecodeRate }));
    if (!result.ok) complain(result.problem);
    else goTo({ at: 'day', day: result.value, tab: 'rig' });
  };
  return (
    <Sheet
      title="New day"
      under="Everything else can be said later."
      onClose={onClose}
      foot={
        <button type="button" class="button button-solid" onClick={() => void start()}>
          Start the day
        </button>
      }
    >
      <div class="section">
        <TextField label="Production" value={production} onInput={setProduction} capitals="words" />
        <div class="field-pair">
          <TextField label="Day" value={label} onInput={setLabel} capitals="words" />
          <TextField label="Date" type="date" value={date} onInput={setDate} />
        </div>
        <Choice
          label="Timecode rate"
          value={timecodeRate}
          options={TIMECODE_RATES.map((value) => ({ value, name: value.replace('DF', ' DF') }))}
          onChoose={setRate}
        />
      </div>
    </Sheet>
  );
}
