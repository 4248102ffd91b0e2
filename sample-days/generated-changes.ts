import type { Draft, Fact } from '../src/facts/fact.ts';
import type { Dice } from './dice.ts';
import type { Prep } from './generated-prep.ts';

/** What was said so far that a change can speak of. */
export interface Said {
  readonly takes: readonly string[];
  readonly changes: readonly Fact[];
}

type Make = (dice: Dice, prep: Prep, said: Said) => Draft | null;

const worn: Make = (dice, { packs, performers }) => {
  if (packs.length === 0 || performers.length === 0) return null;
  const voice = dice.next() < 0.1 ? null : dice.pick(performers);
  return { kind: 'transmitter-worn', transmitter: dice.pick(packs), voice };
};

const muted: Make = (dice, { packs, inputs }) => {
  const atBody = packs.length > 0 && dice.next() < 0.5;
  const part = dice.pick(atBody ? packs : inputs);
  return { kind: 'mute-set', what: atBody ? 'transmitter' : 'input', part, muted: dice.next() < 0.5 };
};

const needed: Make = (dice, { performers }) =>
  performers.length === 0
    ? null
    : {
        kind: 'voices-needed',
        voices: [{ voice: dice.pick(performers), need: dice.pick(['needed', 'resting', 'done']) }],
      };

/** Now and then an input shares the track of another. */
const sent: Make = (dice, { inputs, isos }) => ({
  kind: 'inputs-sent',
  routes: [{ input: dice.pick(inputs), tracks: [dice.pick(isos)] }],
});

const gang: Make = (dice, { isos, packs }) => ({
  kind: 'gang-declared',
  track: dice.pick(isos),
  sources: packs.flatMap((_, at) => (dice.next() < 0.5 ? [`ch${at + 1}`] : [])).slice(0, 64),
});

const COMPLAINTS = ['plane', 'clothing rustle', 'Überlauf, "zu laut"', 'δοκιμή', '=1+1', 'two\nlines'];

const note: Make = (dice, { isos }, { takes }) => {
  if (takes.length === 0) return null;
  const track = dice.next() < 0.4 ? { track: dice.pick(isos) } : {};
  return { kind: 'note-added', take: dice.pick(takes), text: dice.pick(COMPLAINTS), ...track };
};

const described: Make = (dice, _, { takes }) => {
  if (takes.length === 0) return null;
  const mark = dice.pick(['circled', 'noGood', 'falseStart', 'tailSlate'] as const);
  return { kind: 'take-described', take: dice.pick(takes), fields: { [mark]: dice.next() < 0.8 } };
};

const late: Make = (dice, prep, said) => {
  const change = said.takes.length === 0 ? null : dice.pick([worn, muted])(dice, prep, said);
  return change && { ...change, before: dice.pick(said.takes) };
};

const moved: Make = (dice, _, { takes, changes }) => {
  if (takes.length === 0 || changes.length === 0) return null;
  return { kind: 'fact-moved', target: dice.pick(changes).id, to: dice.pick([...takes.slice(-5), null]) };
};

const takenBack: Make = (dice, _, { changes }) =>
  changes.length === 0 ? null : { kind: 'fact-retracted', targets: [dice.pick(changes).id], by: 'hand' };

/** How often each is said among a hundred changes of a day. */
const IN_A_HUNDRED: readonly (readonly [number, Make])[] = [
  [40, worn],
  [12, muted],
  [12, needed],
  [3, sent],
  [3, gang],
  [12, note],
  [8, described],
];
const CORRECTIONS: readonly (readonly [number, Make])[] = [
  [5, late],
  [2, moved],
  [3, takenBack],
];

/** One change of a day. Without corrections, what is said changes nothing that stood before. */
export function changeOf(dice: Dice, prep: Prep, said: Said, corrections: boolean): Draft {
  const kinds = corrections ? [...IN_A_HUNDRED, ...CORRECTIONS] : IN_A_HUNDRED;
  let left = dice.below(kinds.reduce((sum, [weight]) => sum + weight, 0));
  const found = kinds.find(([weight]) => {
    left -= weight;
    return left < 0;
  });
  return found![1](dice, prep, said) ?? muted(dice, prep, said)!;
}
