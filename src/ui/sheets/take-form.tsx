import { useState } from 'preact/hooks';
import { describeTake, logTake } from '../../commands/log-takes.ts';
import { readTypedTake, type TypedTake, typedFrom } from '../../commands/typed-take.ts';
import type { Take } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { nextTake } from '../../day/takes.ts';
import { TAKE_KINDS, type TakeKind } from '../../facts/take-logged.ts';
import { useDay, useRun } from '../context.ts';
import { Choice, TextField } from '../parts/field.tsx';
import { FromWhen } from '../parts/from-when.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { complain } from '../saying.ts';

const KIND_NAMES: Record<TakeKind, string> = {
  take: 'Take',
  pickup: 'Pickup',
  wild: 'Wild track',
  tone: 'Room tone',
  mos: 'MOS',
};

interface TakeFormProps {
  /** The take that is corrected; without one, a take is logged afterwards. */
  readonly take?: Take;
  readonly onClose: () => void;
}

/** Everything of a take, typed: to correct one, or to log one afterwards. */
export function TakeForm({ take, onClose }: TakeFormProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [typed, setTyped] = useState<TypedTake>(() => typedFrom(take ?? nextTake(day)));
  const [before, setBefore] = useState<string | undefined>(undefined);
  const set = (fields: Partial<TypedTake>): void => setTyped({ ...typed, ...fields });

  const save = (): void => {
    const read = readTypedTake(day, typed);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const fields = read.value;
    const done = take
      ? run((now) => describeTake(now, take.id, fields), `${takeText(take)} corrected`)
      : run((now) => logTake(now, fields, { before }), 'Take logged');
    if (done) onClose();
  };
  const slated = typed.kind !== 'wild' && typed.kind !== 'tone';
  return (
    <Sheet
      title={take ? `Correct ${takeText(take)}` : 'A take afterwards'}
      onClose={onClose}
      foot={
        <>
          {!take && <FromWhen before={before} onPlace={setBefore} question="where on the line?" />}
          <button type="button" class="button button-solid" onClick={save}>
            {take ? 'Save' : 'Log this take'}
          </button>
        </>
      }
    >
      <div class="section">
        <Choice
          label="Kind"
          value={typed.kind}
          options={TAKE_KINDS.map((value) => ({ value, name: KIND_NAMES[value] }))}
          onChoose={(kind) => set({ kind })}
        />
        <div class="field-pair">
          {slated && (
            <TextField
              label={day.header.slateStyle === 'lettered' ? 'Slate, as 24B' : 'Slate number'}
              value={typed.slate}
              onInput={(slate) => set({ slate })}
              capitals="characters"
            />
          )}
          <TextField
            label="Take number"
            value={typed.number}
            onInput={(number) => set({ number })}
            inputMode="numeric"
          />
        </div>
        {day.header.slateStyle === 'numbered' && (
          <TextField
            label="Scene"
            value={typed.scene}
            onInput={(scene) => set({ scene })}
            capitals="characters"
          />
        )}
        <div class="field-pair">
          <TextField
            label="Start timecode"
            value={typed.start}
            onInput={(start) => set({ start })}
            inputMode="numeric"
            placeholder="21:32:10:00"
          />
          <TextField
            label="Length, minutes and seconds"
            value={typed.length}
            onInput={(length) => set({ length })}
            placeholder="1:52"
          />
        </div>
        <TextField
          label="File name, if not by the pattern"
          value={typed.file}
          onInput={(file) => set({ file })}
        />
      </div>
    </Sheet>
  );
}
