import { useState } from 'preact/hooks';
import type { Command } from '../../app/day-store.ts';
import type { Day, Part, SelectorPosition } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { asOptions, type Block, blocksOf, type Pair, Pairs } from './block-fields.tsx';
import { SelectField } from './picker.tsx';

/** Where a block begins: the block, and the first of its targets, one to one. */
export interface Beginning {
  readonly block: string;
  readonly first: string;
}

/** Something done to a whole block in one action. */
export interface BlockTask {
  readonly title: string;
  readonly under: string;
  readonly blockLabel: string;
  readonly firstLabel: string;
  /** Between the two of a pair, such as `into`. */
  readonly word: string;
  /** Shown if there are no targets. */
  readonly none: string;
  /** The button label for so many, and the message when done. */
  readonly does: (count: number) => string;
  readonly done: (count: number) => string;
  /** The likeliest start, of the chosen block if there is one. */
  readonly likely: (day: Day, block?: string) => Beginning;
  readonly firsts: (day: Day) => readonly Part[];
  readonly pairUp: (day: Day, block: Block | undefined, first: string, place: Place) => Paired;
  readonly command: (
    from: readonly string[],
    to: readonly string[],
    position: SelectorPosition,
    before: string | undefined,
  ) => Command;
}

/** Where a block goes: the position of its selectors, and the place on the line. */
export interface Place {
  readonly position: SelectorPosition;
  readonly before: string | undefined;
}

export interface Paired {
  readonly pairs: readonly Pair[];
  readonly left: readonly Part[];
  /** What is not offered, and why. */
  readonly except?: string;
}

/** Pairs a whole block one to one, in one action: outputs to inputs, or channels to packs. */
export function BlockSheet({ task, onClose }: { task: BlockTask; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const [{ block, first }, begin] = useState(() => task.likely(day));
  const [chosen, setPosition] = useState<SelectorPosition>('a');
  const blocks = blocksOf(day.rig);
  const firsts = task.firsts(day);
  const selector = day.rig.selectors.find(({ input }) => input === first);
  const position = selector ? chosen : 'a';
  const { pairs, left, except } = task.pairUp(
    day,
    blocks.find(({ id }) => id === block),
    first,
    { position, before },
  );
  const doIt = (): void => {
    const from = pairs.map(({ from: one }) => one.id);
    const to = pairs.map(({ to: other }) => other.id);
    if (run(task.command(from, to, position, before), task.done(pairs.length))) onClose();
  };
  return (
    <Sheet
      title={task.title}
      under={task.under}
      onClose={onClose}
      foot={
        <>
          <FromWhen before={before} onPlace={setBefore} />
          <Button look="solid" class="rig-do" disabled={pairs.length === 0} onClick={doIt}>
            {task.does(pairs.length)}
          </Button>
        </>
      }
    >
      <div class="section">
        <SelectField
          label={task.blockLabel}
          value={block}
          options={blocks}
          onChoose={(id) => begin(task.likely(day, id))}
        />
        <SelectField
          label={task.firstLabel}
          value={first}
          options={asOptions(day, firsts)}
          onChoose={(chosenFirst) => begin({ block, first: chosenFirst })}
        />
        {selector && (
          <Choice
            label="Selector position"
            value={position}
            options={(['a', 'b'] as const).map((value, at) => ({
              value,
              name: selector.positions?.[at] ?? value.toUpperCase(),
            }))}
            onChoose={setPosition}
          />
        )}
        <Pairs rig={day.rig} pairs={pairs} left={left} word={task.word} />
        {except && <p class="soft">{except}</p>}
        {firsts.length === 0 && <p class="soft">{task.none}</p>}
      </div>
    </Sheet>
  );
}
