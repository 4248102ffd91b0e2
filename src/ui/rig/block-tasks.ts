import { inputsFrom, leadFrom, likelyInput, outputsFor, pairUp, plugRun } from '../../app/commands/chain.ts';
import { tuneBlock } from '../../app/commands/rig.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { tunedTo } from '../../day/chain/links.ts';
import type { Day, Part, PartId } from '../../day/model.ts';
import { countOf } from '../words/chain.ts';
import { type Block, blocksOf, channelsIn } from './block-fields.tsx';
import type { Beginning, BlockTask } from './block-sheet.tsx';
import { channelsOn } from './words.ts';

/** The chosen block, or the first with something unconnected; and where its first goes or would go. */
function beginning(
  { rig }: Day,
  wanted: string | undefined,
  inBlock: (block: Block) => readonly Part[],
  goesTo: (part: PartId) => PartId | null | undefined,
  free: (first: Part | undefined) => PartId | undefined,
): Beginning {
  const there = (part: PartId): PartId | null => {
    const to = goesTo(part) ?? null;
    return to !== null && rig.byId.has(to) ? to : null;
  };
  const blocks = blocksOf(rig);
  const loose = blocks.find((block) => inBlock(block).some(({ id }) => there(id) === null));
  const block = blocks.find(({ id }) => id === wanted) ?? loose ?? blocks[0];
  const [first] = block ? inBlock(block) : [];
  return { block: block?.id ?? '', first: (first && there(first.id)) ?? free(first) ?? '' };
}

/** A block of outputs into a run of inputs. */
export const PLUG: BlockTask = {
  title: 'Patch several',
  under: 'a row of outputs into a row of inputs',
  blockLabel: 'Outputs of',
  firstLabel: 'First input',
  word: 'into',
  none: 'No inputs in the rig yet.',
  does: (count) => `Patch ${countOf(count, 'lead')}`,
  done: (count) => `${countOf(count, 'lead')} patched`,
  likely: (day, wanted) => {
    const answers = answersNow(day);
    return beginning(
      day,
      wanted,
      ({ receiver, module }) => outputsFor(day.rig, receiver, module),
      (output) => leadFrom(day.rig, answers.links, output)?.link.value.to,
      (output) => likelyInput(answers, output?.outputKind),
    );
  },
  firsts: ({ rig }) => rig.inputs.filter(({ reserved }) => !reserved),
  pairUp: ({ rig }, block, first) =>
    pairUp(block ? outputsFor(rig, block.receiver, block.module) : [], inputsFrom(rig, first)),
  command: (from, to, position, before) => plugRun(from, to, position, { before }),
};

/** A block of channels tuned to a run of packs. */
export const TUNE: BlockTask = {
  title: 'Tune several',
  under: 'a row of channels to a row of packs',
  blockLabel: 'Channels of',
  firstLabel: 'First pack',
  word: 'to',
  none: 'No packs in the rig yet.',
  does: (count) => `Tune ${countOf(count, 'channel')}`,
  done: (count) => `${countOf(count, 'channel')} tuned`,
  likely: (day, wanted) => {
    const { links } = answersNow(day);
    const packs = day.rig.transmitters;
    return beginning(
      day,
      wanted,
      (block) => channelsIn(day.rig, block),
      (channel) => tunedTo(links, channel)?.value,
      () => (packs.find(({ id }) => channelsOn(day.rig, links, id).length === 0) ?? packs[0])?.id,
    );
  },
  firsts: ({ rig }) => rig.transmitters,
  pairUp: ({ rig }, block, first) => {
    const from = rig.transmitters.findIndex(({ id }) => id === first);
    return pairUp(block ? channelsIn(rig, block) : [], from < 0 ? [] : rig.transmitters.slice(from));
  },
  command: (from, to, _, before) => tuneBlock(from, to, { before }),
};
