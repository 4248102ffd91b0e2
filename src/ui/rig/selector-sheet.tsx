import { useState } from 'preact/hooks';
import { throwSelectors } from '../../app/commands/chain.ts';
import { describePart } from '../../app/commands/rig.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { thrownTo } from '../../day/chain/links.ts';
import type { Day, Part, SelectorPosition } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf, partName } from '../words/chain.ts';
import { positionName } from '../words/facts.ts';
import { runWords } from '../words/number-runs.ts';
import { type PartSheetProps, WholeDay } from './whole-day.tsx';
import { arrivalWords } from './words.ts';

const POSITIONS = ['a', 'b'] as const;

/** One selector: what comes in at either position; a tap throws it. */
export function SelectorSheet({ part, onClose }: PartSheetProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const answers = answersBefore(day, before);
  const reach = answers.inputs.find(({ input }) => input.id === part.input)?.reach;
  const thrown = thrownTo(answers.links, part.id)?.value ?? 'a';
  return (
    <Sheet
      title={part.name}
      under={`before ${partName(day.rig, part.input)}, ${part.bank ?? 'no bank'}`}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <ul class="rows">
        {POSITIONS.map((position) => {
          const name = positionName(day, part.id, position);
          const arrival = (position === thrown ? reach?.arrival : reach?.away) ?? null;
          return (
            <li key={position}>
              <Row
                mark={position === thrown ? 'single' : 'idle'}
                title={name}
                under={arrivalWords(day, arrival)}
                word={position === thrown ? 'thrown here' : 'throw'}
                pressed={position === thrown}
                onTap={() => {
                  const done = `${part.name} to ${name}`;
                  if (run(throwSelectors([part.id], position, { before }), done)) onClose();
                }}
              />
            </li>
          );
        })}
      </ul>
      <WholeDay part={part} onClose={onClose}>
        <PositionNames part={part} />
      </WholeDay>
    </Sheet>
  );
}

function PositionNames({ part }: { part: Part }) {
  const run = useRun();
  const [[first = 'A', second = 'B'], setNames] = useState<readonly string[]>(part.positions ?? []);
  const save = (event: Event): void => {
    event.preventDefault();
    const positions: [string, string] = [first.trim() || 'A', second.trim() || 'B'];
    run(describePart(part.id, { positions }), `${part.name}: ${positions.join(' or ')}`);
  };
  return (
    <form onSubmit={save}>
      <div class="field-pair">
        <TextField label="First position" value={first} onInput={(name) => setNames([name, second])} />
        <TextField label="Second position" value={second} onInput={(name) => setNames([first, name])} />
      </div>
      <Button class="rig-more" type="submit">
        Save position names
      </Button>
    </form>
  );
}

/** The selectors of a bank, in reading order. */
export const bankOf = (day: Day, bank: string): Part[] =>
  day.rig.selectors.filter((selector) => (selector.bank ?? '') === bank);

export function bankWords(day: Day, bank: readonly Part[], before?: string): string {
  const { links } = answersBefore(day, before);
  return POSITIONS.map((position) => {
    const there = bank.filter(({ id }) => (thrownTo(links, id)?.value ?? 'a') === position);
    return there.length > 0 ? `${there.length} at ${positionName(day, there[0]!.id, position)}` : '';
  })
    .filter(Boolean)
    .join(', ');
}

/** A whole bank, thrown in one action. */
export function BankSheet({ bank, onClose }: { bank: string; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const selectors = bankOf(day, bank);
  const ids = selectors.map(({ id }) => id);
  if (ids.length === 0) return null;
  const throwAll = (position: SelectorPosition): void => {
    const done = `${countOf(ids.length, 'selector')} to ${positionName(day, ids[0]!, position)}`;
    if (run(throwSelectors(ids, position, { before }), done)) onClose();
  };
  return (
    <Sheet
      title={bank || 'Selectors'}
      under={`${runWords(selectors.map(({ name }) => name))}: ${bankWords(day, selectors, before)}`}
      onClose={onClose}
      foot={
        <>
          <FromWhen before={before} onPlace={setBefore} />
          <div class="buttons bank-throw">
            {POSITIONS.map((position) => (
              <Button key={position} onClick={() => throwAll(position)}>
                All to {positionName(day, ids[0]!, position)}
              </Button>
            ))}
          </div>
        </>
      }
    >
      <p class="section soft">All of them are thrown at once, as one change.</p>
    </Sheet>
  );
}
