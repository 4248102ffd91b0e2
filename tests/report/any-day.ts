import fc from 'fast-check';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { type Speaker, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';

/** Words as people type them on four keyboards, with what they should not have typed. */
const word = fc.oneof(
  fc.string({
    unit: fc.constantFrom(...'abcXYZ019 -–.,;:/()éŁőßΩλЖя№€→✓"\'<>&=+@#%\\'),
    minLength: 1,
    maxLength: 24,
  }),
  fc.constantFrom(
    '🎬',
    'שלום',
    '音声',
    '\u202eabc',
    'a\u0000b',
    '\r\n',
    '<script>alert(1)</script>',
    '=1+1',
    '../../x',
  ),
);

export const text = fc.array(word, { minLength: 1, maxLength: 6 }).map((words) => words.join(' '));

/** What may be said of a day; `n` picks among what is there. */
const action = fc.record({
  what: fc.constantFrom(
    'take',
    'take',
    'take',
    'note',
    'wear',
    'mute',
    'send',
    'gang',
    'name',
    'roll',
    'part',
    'track',
    'layout',
  ),
  n: fc.nat(1000),
  text,
  flags: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
});
type Action = typeof action extends fc.Arbitrary<infer Value> ? Value : never;

const VOICES = ['ines', 'dora', 'tomas', 'boom'] as const;
const KINDS = ['take', 'take', 'pickup', 'wild', 'tone', 'mos'] as const;

export const pick = <T>(list: readonly T[], n: number): T => list[n % list.length]!;

function draftOf({ what, n, text, flags }: Action, takes: readonly string[]): Draft | undefined {
  const [yes, other, third] = flags;
  switch (what) {
    case 'take':
      return take(String(20 + (n % 3)), n % 4, 1 + (n % 7), {
        kind: pick(KINDS, n),
        circled: yes,
        noGood: other,
        falseStart: third,
        start: n % 5 === 0 ? null : { frames: 90_000 + n, rate: '25' },
        length: n % 7 === 0 ? null : { frames: n, rate: '25' },
        ...(n % 11 === 0 && { file: text.slice(0, 150) }),
      });
    case 'note': {
      const on = takes.length > 0 ? pick(takes, n) : undefined;
      return on
        ? { kind: 'note-added', take: on, text, ...(yes && { track: `tr${1 + (n % 6)}` }) }
        : undefined;
    }
    case 'wear':
      return {
        kind: 'transmitter-worn',
        transmitter: `A${1 + (n % 3)}`,
        voice: yes ? pick(VOICES, n) : null,
      };
    case 'mute':
      return { kind: 'mute-set', what: 'input', part: `aes${1 + (n % 3)}`, muted: yes };
    case 'send':
      return {
        kind: 'inputs-sent',
        routes: [{ input: `aes${1 + (n % 3)}`, tracks: third ? [] : [`tr${2 + (n % 4)}`] }],
      };
    case 'gang':
      return {
        kind: 'gang-declared',
        track: `tr${2 + (n % 4)}`,
        sources: yes ? ['near1', 'near2', 'near3'] : [],
      };
    case 'name':
      return { kind: 'track-named', track: `tr${2 + (n % 4)}`, name: yes ? text.slice(0, 150) : null };
    case 'roll':
      return { kind: 'roll-changed', roll: text.slice(0, 60) };
    case 'track':
      return {
        kind: 'part-described',
        part: `tr${1 + (n % 5)}`,
        fields: { name: other ? pick(['1', '2', 'L', 'Mix R'], n) : text.slice(0, 60), mix: yes },
      };
    case 'layout':
      return { kind: 'day-described', fields: { fileLayout: yes ? 'mono' : 'poly' } };
    case 'part':
      return { kind: 'voice-described', voice: pick(VOICES, n), fields: { part: text.slice(0, 150) } };
  }
}

/** Everybody wears a pack, and two packs may arrive at one input. */
const WIRED: Draft[] = [
  { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' },
  { kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' },
  { kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' },
  { kind: 'part-described', part: 'near1out', fields: { carries: ['near1', 'near3'] } },
];

export interface AnyDay {
  readonly phone: Speaker;
  readonly takes: readonly string[];
}

/** Any small day, hostile words included, said anew on a phone of its own whenever it is asked for. */
export const anyPhone: fc.Arbitrary<() => AnyDay> = fc
  .record({
    head: fc.tuple(text, text, text),
    wired: fc.constantFrom('not', 'to tracks', 'to none'),
    actions: fc.array(action, { maxLength: 40 }),
  })
  .map(({ head: [production, unit, remarks], wired, actions }) => () => {
    const phone = speaker();
    phone.say(...SMALL_RIG);
    phone.say(...SMALL_CAST);
    phone.say({ kind: 'day-described', fields: { production, unit, remarks, date: '2026-10-07' } });
    if (wired !== 'not') phone.say(...WIRED);
    if (wired === 'to none') phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: [] }] });
    const takes: string[] = [];
    for (const one of actions) {
      const draft = draftOf(one, takes);
      if (!draft) continue;
      const id = phone.id(draft);
      if (draft.kind === 'take-logged') takes.push(id);
    }
    return { phone, takes };
  });

/** Any small day, hostile words included. */
export const anyDay: fc.Arbitrary<Day> = anyPhone.map((said) => said().phone.day());
