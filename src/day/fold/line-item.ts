import type { Fact } from '../../facts/fact.ts';
import type { LineItem } from '../model.ts';

const ON_THE_LINE: ReadonlySet<Fact['kind']> = new Set<Fact['kind']>([
  'take-logged',
  'slate-called',
  'transmitter-worn',
  'channels-tuned',
  'leads-plugged',
  'selectors-thrown',
  'inputs-sent',
  'mute-set',
  'gang-declared',
  'gang-ended',
  'track-named',
  'voices-needed',
  'roll-changed',
  'voice-pinned',
  'out-marked',
  'moves-weighed',
]);

/** Whether a fact has a place on the line; the others hold for the whole day or speak of one take. */
export const isOnTheLine = (fact: Fact): boolean => ON_THE_LINE.has(fact.kind);

/** An item of the line while its day is being folded. */
export type MutableLineItem = { -readonly [Field in keyof LineItem]: LineItem[Field] };

/** An item that is not on the line yet. */
export const newLineItem = (fact: Fact, takenBack: boolean): MutableLineItem => ({
  fact,
  takenBack,
  chainBefore: 0,
  place: -1,
});
