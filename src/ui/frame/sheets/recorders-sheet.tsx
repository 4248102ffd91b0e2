import { useState } from 'preact/hooks';
import { addRecorder, loadRoll, rollRecorders } from '../../../app/commands/recorders.ts';
import { strikePart } from '../../../app/commands/rig.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { rollIn } from '../../../day/chain/links.ts';
import { type Recorder, recordersOf, rollingBefore } from '../../../day/recorders/rolling.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Row } from '../../kit/row.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { Toggles } from '../../kit/toggles.tsx';
import { listOf } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';

/** Which recorders roll, from which take on; and another one that rolls along. */
export function RecordersSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const all = recordersOf(day);
  const [before, setBefore] = useState<string | undefined>();
  const held = rollingBefore(day, before).map(({ id }) => id);
  const [chosen, setChosen] = useState<readonly string[] | null>(null);
  const [name, setName] = useState('');
  const [rolls, setRolls] = useState<Readonly<Record<string, string>>>({});
  const on = all.map(({ id }) => id).filter((id) => (chosen ?? held).includes(id));

  const roll = (): void => {
    const names = listOf(all.filter(({ id }) => on.includes(id)).map((one) => one.name));
    if (run(rollRecorders(on, { before }), `${names} rolling`)) onClose();
  };
  const add = (): void => {
    if (!run(addRecorder(name, { before }), `${name.trim()} rolling`)) return;
    setName('');
    setChosen(null);
  };

  const rollOf = (id: string): string => rollIn(answersBefore(day, before).links, id)?.value ?? '';
  const load = ({ id, name: recorder }: Recorder): void => {
    const roll = rolls[id] ?? rollOf(id);
    run(loadRoll(id, roll, { before }), `Roll ${roll.trim()} in ${recorder}`);
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
              <Button look="solid" onClick={roll}>
                Save
              </Button>
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
      <form
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <TextField label="Name of a backup recorder" value={name} onInput={setName} />
        <Button type="submit">Add and roll</Button>
      </form>
      {all.length > 1 && (
        <ul class="rows">
          {all.slice(1).map((one) => (
            <li key={one.id}>
              <div class="row-action">
                <Row title={one.name} under={`The same tracks as ${all[0]!.name}`} />
                <Button
                  look="plain"
                  label={`Delete ${one.name}`}
                  onClick={() => run(strikePart(one.id), `${one.name} deleted`)}
                >
                  Delete
                </Button>
              </div>
              <form
                class="section"
                onSubmit={(event) => {
                  event.preventDefault();
                  load(one);
                }}
              >
                <TextField
                  label={`Sound roll in ${one.name}`}
                  value={rolls[one.id] ?? rollOf(one.id)}
                  onInput={(roll) => setRolls({ ...rolls, [one.id]: roll })}
                  capitals="characters"
                />
                <Button type="submit" label={`Save the roll in ${one.name}`}>
                  Save roll
                </Button>
              </form>
            </li>
          ))}
        </ul>
      )}
    </Sheet>
  );
}
