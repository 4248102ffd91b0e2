import { useState } from 'preact/hooks';
import { addRecorder, rollRecorders } from '../../../app/commands/recorders.ts';
import type { PartId } from '../../../day/model.ts';
import { recordersOf, rollingBefore, rollingNow } from '../../../day/recorders/rolling.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Row } from '../../kit/row.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { Toggles } from '../../kit/toggles.tsx';
import { listOf } from '../../words/chain.ts';
import { recorderPartsWords, recorderSetWords } from '../../words/recorders.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { complain } from '../messages.ts';
import { BesideSheet } from '../rigs/beside-sheet.tsx';
import { hrefOf } from '../route.ts';
import { RecorderSheet } from './recorder-sheet.tsx';

/** The recorders of the day: which of them roll, from when; what each is set to; and another one. */
export function RecordersSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const all = recordersOf(day);
  const [before, setBefore] = useState<string | undefined>();
  const [chosen, setChosen] = useState<readonly string[] | null>(null);
  const [name, setName] = useState('');
  const [open, setOpen] = useState<PartId | null>(null);
  const [besideName, setBesideName] = useState<string | null>(null);
  if (besideName !== null) {
    const close = (): void => setBesideName(null);
    const done = (): void => {
      setName('');
      close();
    };
    return <BesideSheet name={besideName} onClose={close} onDone={done} />;
  }
  if (open !== null) return <RecorderSheet recorder={open} onClose={() => setOpen(null)} />;

  const held = rollingBefore(day, before).map(({ id }) => id);
  const on = all.map(({ id }) => id).filter((id) => (chosen ?? held).includes(id));
  const isHeld = on.join(' ') === held.join(' ');
  const isRolling = new Set(rollingNow(day).map(({ id }) => id));
  const roll = (): void => {
    const names = listOf(all.filter(({ id }) => on.includes(id)).map((one) => one.name));
    if (run(rollRecorders(on, { before }), `${names} rolling`)) onClose();
  };
  const add = (): void => {
    if (!run(addRecorder(name, { before }), `${name.trim()} rolling`)) return;
    setName('');
    setChosen(null);
  };
  const addWithRig = (): void => {
    if (name.trim() === '') complain({ code: 'name-empty' });
    else setBesideName(name.trim());
  };
  return (
    <Sheet
      title="Recorders"
      under={listOf(all.map((one) => one.name))}
      onClose={onClose}
      foot={
        <>
          <FromWhen before={before} onPlace={setBefore} question="Starting when?" />
          {all.length > 1 && (
            <div class="buttons">
              <Button look="solid" disabled={isHeld} onClick={roll}>
                Save
              </Button>
              <a class="button as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'unit' })}>
                Move the unit
              </a>
            </div>
          )}
        </>
      }
    >
      {all.length > 1 && (
        <div class="section">
          <Toggles named label="Rolling" options={all} on={on} onChange={setChosen} />
        </div>
      )}
      <ul class="rows">
        {all.map((one) => (
          <li key={one.id}>
            <Row
              title={one.name}
              under={[recorderPartsWords(day, one.id), recorderSetWords(day, one.id)].join(' · ')}
              word={isRolling.has(one.id) && all.length > 1 ? 'rolling' : ''}
              onTap={() => setOpen(one.id)}
            />
          </li>
        ))}
      </ul>
      <form
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <p class="field soft">
          A backup rolls along and records the same tracks as {all[0]!.name}. One with its own rig stands by
          until it is set to roll.
        </p>
        <TextField label="Name of another recorder" value={name} onInput={setName} />
        <div class="buttons">
          <Button type="submit">Add as a backup</Button>
          <Button onClick={addWithRig}>Add with its own rig</Button>
        </div>
      </form>
    </Sheet>
  );
}
