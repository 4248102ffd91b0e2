import { leadFrom } from '../../app/commands/chain.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { isFitting, takesHardline } from '../../day/answers/inputs-to-offer.ts';
import { isHardline } from '../../day/cast-in-order.ts';
import type { Day, Links, Part, PartId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { nameOf, partName } from '../words/chain.ts';
import { nameWithRecorder } from '../words/recorder-names.ts';
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
  const recorder = recorderOfPart(input);
  const all = [...hardlines, ...outputs].map(({ id, name }) => {
    const { isThere, word } = placeOf(day, links, id, recorder);
    return { id, name, isThere, word };
  });
  const loose = all.filter(({ isThere }) => !isThere);
  const plugged = all.filter(({ isThere }) => isThere);
  return [...(current ? [{ id: 'nothing', name: 'nothing', word: 'unplug it' }] : []), ...loose, ...plugged];
}

/** Where an end goes on a recorder; or else on another, which it can go to as well, by a second lead. */
function placeOf(
  day: Day,
  links: Links,
  from: string,
  recorder: PartId,
): { readonly isThere: boolean; readonly word: string } {
  const to = (at?: PartId): PartId | undefined => {
    const input = leadFrom(day.rig, links, from, at)?.link.value.to;
    return input && day.rig.byId.has(input) ? input : undefined;
  };
  const there = to(recorder);
  const somewhere = there ?? to();
  const word = somewhere
    ? `› ${there ? partName(day.rig, there) : nameWithRecorder(day, somewhere)}`
    : 'no lead';
  return { isThere: there !== undefined, word };
}

/** Where an output can go on a recorder: unreserved inputs that fit, each selector position separately; free ones first. */
export function inputOptions(
  day: Day,
  before: string | undefined,
  output: Part,
  recorder: PartId,
  current: PartId | null,
): Option[] {
  const { inputs } = answersBefore(day, before);
  const options = inputs
    .filter(({ input }) => recorderOfPart(input) === recorder)
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
