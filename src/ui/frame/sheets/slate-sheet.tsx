import { useState } from 'preact/hooks';
import { callSlate, rollTake } from '../../../app/commands/takes.ts';
import { styleOfDay } from '../../../day/header.ts';
import type { TakeKind } from '../../../day/model.ts';
import { parseSlate, sceneText, slateText, takeText } from '../../../day/slate.ts';
import { currentSlate, nextTake, ownOpenTake, slateAfter } from '../../../day/takes.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Row } from '../../kit/row.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { useDatabase, useDay, useRun } from '../context.ts';
import { complain } from '../messages.ts';
import { TakeForm } from './take-form.tsx';

const KINDS: readonly { readonly kind: TakeKind; readonly title: string; readonly word: string }[] = [
  { kind: 'pickup', title: 'Pickup', word: 'rolls now' },
  { kind: 'wild', title: 'Wild track', word: 'rolls now' },
  { kind: 'tone', title: 'Room tone', word: 'rolls now' },
  { kind: 'mos', title: 'MOS', word: 'logged, no sound' },
];

/** Other kinds of take, another slate, or a take logged late. */
export function SlateSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const style = styleOfDay(day);
  const database = useDatabase();
  const slate = currentSlate(day, database);
  const [typed, setTyped] = useState('');
  const [scene, setScene] = useState(sceneText(slate));
  const [byHand, setByHand] = useState(false);
  const after = slateAfter(day, slate);

  const call = (): void => {
    const read = parseSlate(typed, style, scene);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    if (run(callSlate(read.value), `Slate ${slateText(read.value)}`)) onClose();
  };
  const roll = (kind: TakeKind): void => {
    const name = takeText(nextTake(day, kind, slate));
    if (run(rollTake(kind), kind === 'mos' ? `${name} logged` : `${name} rolling`)) onClose();
  };

  if (byHand) return <TakeForm onClose={onClose} />;
  return (
    <Sheet
      title={`Slate ${slateText(slate)}`}
      under={ownOpenTake(day, database) ? 'a take is rolling' : undefined}
      onClose={onClose}
    >
      <ul class="rows">
        <li>
          <Row
            title={`Next setup: ${slateText(after)}`}
            onTap={() => {
              if (run(callSlate(after), `Slate ${slateText(after)}`)) onClose();
            }}
          />
        </li>
        {KINDS.map(({ kind, title, word }) => (
          <li key={kind}>
            <Row
              title={`${title} ${takeText(nextTake(day, kind, slate))}`}
              word={word}
              onTap={() => roll(kind)}
            />
          </li>
        ))}
        <li>
          <Row title="Log a missed take" word="type it in" onTap={() => setByHand(true)} />
        </li>
      </ul>
      <form
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          call();
        }}
      >
        <div class="field-pair">
          <TextField
            label={style === 'lettered' ? 'Another slate, e.g. 24B' : 'Another slate number'}
            value={typed}
            onInput={setTyped}
            capitals="characters"
            inputMode={style === 'numbered' ? 'numeric' : 'text'}
          />
          {style === 'numbered' && (
            <TextField label="Scene" value={scene} onInput={setScene} capitals="characters" />
          )}
        </div>
        <Button look="solid" type="submit">
          Use this slate
        </Button>
      </form>
    </Sheet>
  );
}
