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
  'recorder-set',
  'recorders-rolling',
  'voice-pinned',
  'out-marked',
  'moves-weighed',
  'handed-over',
  'mic-mounted',
]);

/** Whether a fact has a place on the line; the others concern the whole day or one take. */
export const isOnTheLine = (fact: Fact): boolean => ON_THE_LINE.has(fact.kind);

/** A line item during folding. */
export type MutableLineItem = { -readonly [Field in keyof LineItem]: LineItem[Field] };

/** A line item before it is placed. */
export const newLineItem = (fact: Fact, takenBack: boolean): MutableLineItem => ({
  fact,
  takenBack,
  chainBefore: 0,
  place: -1,
});
