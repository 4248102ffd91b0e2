import { useState } from 'preact/hooks';
import { describeTake, logTake } from '../../../app/commands/takes.ts';
import { rateOfTake, readTypedTake, type TypedTake, typedFrom } from '../../../app/commands/typed.ts';
import { TAKE_KINDS, type Take, type TakeKind } from '../../../day/model.ts';
import { startOfTake } from '../../../day/settings/settings.ts';
import { takeText } from '../../../day/slate.ts';
import { currentSlate, isSlated, nextTake, ownOpenTake } from '../../../day/takes.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { SLATE_STYLES } from '../../words/takes.ts';
import { useDatabase, useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { complain } from '../messages.ts';

const KIND_NAMES: Record<TakeKind, string> = {
  take: 'Take',
  pickup: 'Pickup',
  wild: 'Wild track',
  tone: 'Room tone',
  mos: 'MOS',
};

interface TakeFormProps {
  /** The take to correct; without one, a take is logged late. */
  readonly take?: Take;
  readonly onClose: () => void;
}

/** A form for a whole take: to correct one, or to log one late. */
export function TakeForm({ take, onClose }: TakeFormProps) {
  const day = useDay().day.value;
  const run = useRun();
  // The values it opened with: later changes from elsewhere are not overwritten unless their field is
  // touched.
  const database = useDatabase();
  const [from] = useState(() =>
    take ? { ...take, start: startOfTake(day, take) } : nextTake(day, 'take', currentSlate(day, database)),
  );
  const showed = typedFrom(from);
  const [typed, setTyped] = useState(showed);
  // A take logged late was over before the one rolling now.
  const [before, setBefore] = useState(() => ownOpenTake(day, database)?.id);
  const slated = isSlated(typed.kind);
  const style = slated ? typed.style : from.slate.style;
  const set = (fields: Partial<TypedTake>): void => setTyped({ ...typed, ...fields });

  const save = (): void => {
    const read = readTypedTake(typed, showed, rateOfTake(day, from, before));
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const { kind, slate, number } = from;
    const fields = take ? read.value : { kind, slate, number, ...read.value };
    const isSaid = Object.keys(fields).length > 0;
    const done = take
      ? !isSaid || run(describeTake(take.id, fields), `${takeText(take)} edited`)
      : run(logTake(fields, { before }), 'Take logged');
    if (done) onClose();
  };
  return (
    <Sheet
      title={take ? `Edit ${takeText(take)}` : 'Log a missed take'}
      onClose={onClose}
      foot={
        <>
          {!take && <FromWhen before={before} onPlace={setBefore} question="Where in the day?" />}
          <Button look="solid" onClick={save}>
            {take ? 'Save' : 'Log this take'}
          </Button>
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
        {slated && from.slate.style !== day.header.slateStyle && (
          <Choice
            label="Slates"
            value={style}
            options={SLATE_STYLES}
            onChoose={(chosen) => set({ style: chosen })}
          />
        )}
        <div class="field-pair">
          {slated && (
            <TextField
              label={style === 'lettered' ? 'Slate, e.g. 24B' : 'Slate number'}
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
        {style === 'numbered' && (
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
            label="Length"
            value={typed.length}
            onInput={(length) => set({ length })}
            placeholder="1:52 or 1:02:10"
          />
        </div>
        <TextField label="File name, if different" value={typed.file} onInput={(file) => set({ file })} />
      </div>
    </Sheet>
  );
}
