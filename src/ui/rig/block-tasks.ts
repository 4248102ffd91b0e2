import { inputsFrom, leadFrom, likelyInput, outputsFor, pairUp, plugRun } from '../../app/commands/chain.ts';
import { tuneBlock } from '../../app/commands/rig.ts';
import { answersBefore, answersNow } from '../../day/answers/answers.ts';
import { isFitting } from '../../day/answers/inputs-to-offer.ts';
import { tunedTo } from '../../day/chain/links.ts';
import type { Day, Links, Part, PartId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { countOf } from '../words/chain.ts';
import { sourceName } from '../words/facts.ts';
import { runWords } from '../words/number-runs.ts';
import { type Block, blocksOf, channelsIn } from './block-fields.tsx';
import type { Beginning, BlockTask, Paired, Place } from './block-sheet.tsx';
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

const NONE: Paired = { pairs: [], left: [] };

/** The outputs of a block without a lead to a recorder, or to none at all. */
const unplugged = (day: Day, links: Links, { receiver, module }: Block, recorder?: PartId) =>
  outputsFor(day.rig, receiver, module).filter(({ id }) => {
    const to = leadFrom(day.rig, links, id, recorder)?.link.value.to ?? null;
    return to === null || !day.rig.byId.has(to);
  });

/** Outputs without a lead into inputs that they fit. A lead that is plugged already is not moved with the rest. */
function plugPairs(day: Day, block: Block, first: PartId, { position, before }: Place): Paired {
  const { inputs, links } = answersBefore(day, before);
  const recorder = recorderOfPart(day.rig.byId.get(first) ?? {});
  const loose = unplugged(day, links, block, recorder);
  const plugged = outputsFor(day.rig, block.receiver, block.module).filter((one) => !loose.includes(one));
  const sockets = inputsFrom(day.rig, first);
  const fits = (output: Part): boolean => sockets.some((input) => isFitting(output, input));
  const { pairs, left } = pairUp(loose.filter(fits), sockets);
  const inSocket = (input: Part): string | undefined => {
    const reach = inputs.find((one) => one.input.id === input.id)?.reach;
    const isThrown = !reach?.selector || reach.selector.position === position;
    const from = (isThrown ? reach?.arrival : reach?.away)?.from;
    return from && sourceName(day, from);
  };
  const names = runWords(plugged.map(({ name }) => name));
  return {
    pairs: pairs.map(([from, to]) => {
      const out = inSocket(to);
      return out ? { from, to, out } : { from, to };
    }),
    left: [...left, ...loose.filter((output) => !fits(output))],
    ...(plugged.length > 0 && { except: `Plugged already, and left as they are: ${names}.` }),
  };
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
    const { links } = answers;
    return beginning(
      day,
      wanted,
      (block) => unplugged(day, links, block),
      () => null,
      (output) => likelyInput(answers, output?.outputKind),
    );
  },
  firsts: ({ rig }) => rig.inputs.filter(({ reserved }) => !reserved),
  pairUp: (day, block, first, place) => (block ? plugPairs(day, block, first, place) : NONE),
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
    const { pairs, left } = pairUp(
      block ? channelsIn(rig, block) : [],
      from < 0 ? [] : rig.transmitters.slice(from),
    );
    return { pairs: pairs.map(([channel, pack]) => ({ from: channel, to: pack })), left };
  },
  command: (from, to, _, before) => tuneBlock(from, to, { before }),
};
