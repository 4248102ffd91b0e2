import { useState } from 'preact/hooks';
import { inputsFrom, leadFrom, likelyInput, outputsFor, pairUp, plugRun } from '../../commands/plug-run.ts';
import { answersNow } from '../../day/answers.ts';
import type { Day, SelectorPosition } from '../../day/model.ts';
import { useDay, useRun } from '../context.ts';
import { Choice } from '../parts/field.tsx';
import { FromWhen } from '../parts/from-when.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { asOptions, type Block, blocksOf, Pairs } from './block-fields.tsx';
import { SelectField } from './picker.tsx';

interface Choices {
  readonly block: string;
  readonly first: string;
  readonly position: SelectorPosition;
}

/** The first block that still has an output without a lead, and where its first output is led or would go. */
function likely(day: Day, wanted?: string): Choices {
  const answers = answersNow(day);
  const led = (output: string): string | null => {
    const to = leadFrom(day.rig, answers.links, output)?.link.value.to ?? null;
    return to !== null && day.rig.byId.has(to) ? to : null;
  };
  const outputsIn = (block: Block) => outputsFor(day.rig, block.receiver, block.module);
  const blocks = blocksOf(day.rig);
  const loose = blocks.find((block) => outputsIn(block).some(({ id }) => led(id) === null));
  const block = blocks.find(({ id }) => id === wanted) ?? loose ?? blocks[0];
  const [output] = block ? outputsIn(block) : [];
  const first = (output && led(output.id)) ?? likelyInput(answers, output?.outputKind) ?? '';
  return { block: block?.id ?? '', first, position: 'a' };
}

/** A whole block of outputs into a run of inputs, one to one, in one action. */
export function PlugBlockSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const [chosen, setChosen] = useState<Choices>(() => likely(day));
  const blocks = blocksOf(day.rig);
  const block = blocks.find(({ id }) => id === chosen.block);
  const outputs = block ? outputsFor(day.rig, block.receiver, block.module) : [];
  const { pairs, left } = pairUp(outputs, inputsFrom(day.rig, chosen.first));
  const selector = day.rig.selectors.find(({ input }) => input === chosen.first);
  const position = selector ? chosen.position : 'a';
  const plug = (): void => {
    const from = pairs.map(([output]) => output.id);
    const into = pairs.map(([, input]) => input.id);
    const done = `${countOf(pairs.length, 'lead')} plugged`;
    if (run((now) => plugRun(now, from, into, position, { before }), done)) onClose();
  };
  return (
    <Sheet
      title="Plug a block"
      under="outputs into inputs, one to one"
      onClose={onClose}
      foot={
        <>
          <FromWhen before={before} onPlace={setBefore} />
          <button
            type="button"
            class="button button-solid rig-do"
            disabled={pairs.length === 0}
            onClick={plug}
          >
            Plug {countOf(pairs.length, 'lead')}
          </button>
        </>
      }
    >
      <div class="section">
        <SelectField
          label="Outputs of"
          value={chosen.block}
          options={blocks}
          onChoose={(id) => setChosen(likely(day, id))}
        />
        <SelectField
          label="First input"
          value={chosen.first}
          options={asOptions(day.rig.inputs.filter(({ reserved }) => !reserved))}
          onChoose={(first) => setChosen({ ...chosen, first })}
        />
        {selector && (
          <Choice
            label="At the selectors' position"
            value={position}
            options={(['a', 'b'] as const).map((value, at) => ({
              value,
              name: selector.positions?.[at] ?? value.toUpperCase(),
            }))}
            onChoose={(value) => setChosen({ ...chosen, position: value })}
          />
        )}
        <Pairs rig={day.rig} pairs={pairs} left={left} word="into" />
      </div>
    </Sheet>
  );
}
