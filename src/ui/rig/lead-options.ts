import { leadFrom } from '../../app/commands/chain.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { isFitting, takesHardline } from '../../day/answers/inputs-to-offer.ts';
import { isHardline } from '../../day/cast-in-order.ts';
import type { Day, Links, Part, PartId } from '../../day/model.ts';
import { nameOf, partName } from '../words/chain.ts';
import type { Option } from './picker.tsx';
import { arrivalWords } from './words.ts';

/** Whatever fits an input: outputs not reserved, and hardlines; unconnected ones first. What is in it stays. */
export function leadOptions(
  day: Day,
  before: string | undefined,
  input: Part,
  current: string | undefined,
): Option[] {
  const { links } = answersBefore(day, before);
  const outputs = day.rig.outputs
    .filter((output) => !output.reserved && (isFitting(output, input) || output.id === current))
    .map(({ id, name }) => ({ id, name }));
  const hardlines = [...day.voices.values()]
    .filter(({ id, kind, struck }) => isHardline(kind) && !struck && (takesHardline(input) || id === current))
    .map(({ id }) => ({ id, name: nameOf(day, id) }));
  const all = [...hardlines, ...outputs].map(({ id, name }) => ({ id, name, word: placeOf(day, links, id) }));
  const loose = all.filter(({ word }) => word === 'no lead');
  const plugged = all.filter(({ word }) => word !== 'no lead');
  return [...(current ? [{ id: 'nothing', name: 'nothing', word: 'unplug it' }] : []), ...loose, ...plugged];
}

function placeOf(day: Day, links: Links, from: string): string {
  const to = leadFrom(day.rig, links, from)?.link.value.to;
  return to && day.rig.byId.has(to) ? `› ${partName(day.rig, to)}` : 'no lead';
}

/** Where an output can go: unreserved inputs that fit, each selector position separately; free ones first. */
export function inputOptions(
  day: Day,
  before: string | undefined,
  output: Part,
  current: PartId | null,
): Option[] {
  const { inputs } = answersBefore(day, before);
  const options = inputs
    .filter(({ input }) => !input.reserved && (isFitting(output, input) || input.id === current))
    .flatMap(({ input, reach }) => {
      if (!reach.selector)
        return [{ id: `a:${input.id}`, name: input.name, free: !reach.arrival, arrival: reach.arrival }];
      const { part, position: thrown } = reach.selector;
      return (['a', 'b'] as const).map((position, at) => {
        const arrival = position === thrown ? reach.arrival : reach.away;
        const name = `${input.name}, ${part.positions?.[at] ?? position}`;
        return { id: `${position}:${input.id}`, name, free: !arrival, arrival };
      });
    })
    .map(({ id, name, free, arrival }) => ({
      id,
      name,
      free,
      word: free ? 'free' : arrivalWords(day, arrival),
    }));
  const sorted = [...options.filter(({ free }) => free), ...options.filter(({ free }) => !free)];
  return [...(current !== null ? [{ id: 'nothing', name: 'nothing', word: 'unplug it' }] : []), ...sorted];
}
