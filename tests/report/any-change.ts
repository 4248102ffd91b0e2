import fc from 'fast-check';
import type { Draft } from '../../src/facts/fact.ts';
import { take } from '../day/say.ts';
import { type AnyDay, pick, text } from './any-day.ts';

/** What a change is made of; `n` picks among what is there. */
export const anySaid = fc.record({ n: fc.nat(1000), text, yes: fc.boolean() });
export type AnySaid = typeof anySaid extends fc.Arbitrary<infer Value> ? Value : never;

type Say = (day: AnyDay, said: AnySaid) => Draft[];

const onTake =
  (fields: (said: AnySaid) => object): Say =>
  ({ takes }, said) =>
    takes.length > 0
      ? [{ kind: 'take-described', take: pick(takes, said.n), fields: fields(said) } as Draft]
      : [];

/** A change on the line, half of them late: put before one of the takes. */
const placed =
  (draft: (said: AnySaid) => object): Say =>
  ({ takes }, said) => {
    const before = said.yes && takes.length > 0 ? { before: pick(takes, said.n) } : {};
    return [{ ...draft(said), ...before } as Draft];
  };

const ofDay =
  (fields: (said: AnySaid) => object): Say =>
  (_, said) => [{ kind: 'day-described', fields: fields(said) } as Draft];

const typedOnDay = (field: string): Say => ofDay((said) => ({ [field]: said.text.slice(0, 150) }));

const ofTrack =
  (fields: (said: AnySaid) => object): Say =>
  (_, said) => [{ kind: 'part-described', part: `tr${1 + (said.n % 5)}`, fields: fields(said) } as Draft];

const voices = ['ines', 'dora', 'tomas', 'boom'] as const;
const pack = ({ n }: AnySaid): string => `A${1 + (n % 3)}`;
const input = ({ n }: AnySaid): string => `aes${1 + (n % 3)}`;
const stamp = ({ n }: AnySaid, rate = '25') => ({ frames: n, rate });

/** One change of every kind that the report prints. */
export const CHANGES: Record<string, Say> = {
  // The head
  production: typedOnDay('production'),
  'the day’s name': typedOnDay('label'),
  date: ofDay(({ n }) => ({ date: `2026-11-${10 + (n % 20)}` })),
  unit: typedOnDay('unit'),
  mixer: typedOnDay('mixer'),
  boom: typedOnDay('boom'),
  utility: typedOnDay('utility'),
  contact: typedOnDay('contact'),
  recorder: typedOnDay('recorder'),
  remarks: typedOnDay('remarks'),
  'sample rate': ofDay(({ n }) => ({ sampleRate: 44_100 + n })),
  'bit depth': ofDay(({ n }) => ({ bitDepth: pick(['16', '32', '32f'], n) })),
  'timecode rate': ofDay(({ n }) => ({ timecodeRate: pick(['24', '29.97DF', '30'], n) })),
  'layout of files': ofDay(({ yes }) => ({ fileLayout: yes ? 'mono' : 'poly' })),
  'pattern of names': ofDay(({ n }) => ({
    filePattern: pick(['{roll}_{count:3}', '{slate}-{take:2}_tr{track}'], n),
  })),
  // Takes
  'a take more': (_, { n, yes }) => [take('30', n % 3, 1 + (n % 4), yes ? { kind: 'mos' } : {})],
  'a take taken back': ({ takes }, { n }) =>
    takes.length > 0 ? [{ kind: 'fact-retracted', targets: [pick(takes, n)], by: 'hand' }] : [],
  'a take moved': ({ takes }, { n }) =>
    takes.length > 0 ? [{ kind: 'fact-moved', target: takes.at(-1)!, to: pick(takes, n) }] : [],
  'kind of a take': onTake(({ n }) => ({ kind: pick(['take', 'pickup', 'wild', 'tone', 'mos'], n) })),
  'slate of a take': onTake(({ n, yes }) => ({
    slate: yes
      ? { style: 'lettered', scene: '40', setup: n % 4 }
      : { style: 'numbered', number: n, scene: '40' },
  })),
  'scene of a take alone': onTake(() => ({ slate: { style: 'lettered', scene: '20A', setup: 0 } })),
  'number of a take': onTake(({ n }) => ({ number: 1 + n })),
  'start of a take': onTake((said) => ({ start: said.yes ? stamp(said) : null })),
  'length of a take': onTake((said) => ({ length: said.yes ? stamp(said) : null })),
  'rate of a length': onTake((said) => ({ length: stamp(said, said.yes ? '24' : '23.976') })),
  circled: onTake(({ yes }) => ({ circled: yes })),
  'no good': onTake(({ yes }) => ({ noGood: yes })),
  'false start': onTake(({ yes }) => ({ falseStart: yes })),
  'tail slate': onTake(({ yes }) => ({ tailSlate: yes })),
  'a take that rolls on': onTake(({ n }) => ({ rolledAt: 1_790_000_000_000 + n, length: null })),
  'name of a file': onTake(({ text: name, yes }) => ({ file: yes ? name.slice(0, 150) : null })),
  'a note': ({ takes }, { n, text: said, yes }) =>
    takes.length > 0
      ? [{ kind: 'note-added', take: pick(takes, n), text: said, ...(yes && { track: `tr${1 + (n % 5)}` }) }]
      : [],
  'a note taken back': ({ phone }, { n }) => {
    const notes = phone.facts.filter(({ kind }) => kind === 'note-added');
    return notes.length > 0 ? [{ kind: 'fact-retracted', targets: [pick(notes, n).id], by: 'hand' }] : [];
  },
  // Who was on which track
  roll: placed((said) => ({ kind: 'roll-changed', roll: said.text.slice(0, 60) })),
  'a rate set from a place on': placed(({ n }) => ({
    kind: 'recorder-set',
    settings: pick([{ timecodeRate: '23.976' }, { sampleRate: 96_000 }, { timecodeRate: '29.97DF' }], n),
  })),
  'files set from a place on': placed(({ n }) => ({
    kind: 'recorder-set',
    settings: pick([{ fileLayout: 'mono' }, { filePattern: '{roll}-{count}' }], n),
  })),
  'a pack on another': placed((said) => ({
    kind: 'transmitter-worn',
    transmitter: pack(said),
    voice: pick([...voices, null], said.n),
  })),
  'a mute of an input': placed((said) => ({
    kind: 'mute-set',
    what: 'input',
    part: input(said),
    muted: true,
  })),
  'a mute of a pack': placed((said) => ({
    kind: 'mute-set',
    what: 'transmitter',
    part: pack(said),
    muted: true,
  })),
  'an input to another track': placed((said) => ({
    kind: 'inputs-sent',
    routes: [{ input: input(said), tracks: [`tr${2 + (said.n % 4)}`] }],
  })),
  'a gang': placed(({ n, yes }) => ({
    kind: 'gang-declared',
    track: `tr${2 + (n % 4)}`,
    sources: yes ? ['near1', 'near2', 'near3'] : [],
  })),
  'a name typed by hand': placed(({ n, text: name, yes }) => ({
    kind: 'track-named',
    track: `tr${1 + (n % 5)}`,
    name: yes ? name.slice(0, 150) : null,
  })),
  'a channel tuned': placed((said) => ({
    kind: 'channels-tuned',
    tunings: [{ channel: `near${1 + (said.n % 3)}`, transmitter: said.n % 2 ? pack(said) : null }],
  })),
  'a lead': placed((said) => ({
    kind: 'leads-plugged',
    leads: [
      {
        lead: `l${1 + (said.n % 3)}`,
        from: `near${1 + (said.n % 3)}out`,
        to: said.n % 2 ? input(said) : null,
      },
    ],
  })),
  'who is needed': placed(({ n }) => ({
    kind: 'voices-needed',
    voices: [{ voice: pick(voices, n), need: pick(['needed', 'resting', 'done'], n) }],
  })),
  // Cast and rig
  'name of a part': (_, { n, text: part }) => [
    { kind: 'voice-described', voice: pick(voices, n), fields: { part: part.slice(0, 150) } },
  ],
  'another voice of a name': ({ phone, takes }, { n, yes }) => {
    const before = yes && takes.length > 0 ? { before: pick(takes, n) } : {};
    const part = phone.day().voices.get(pick(voices, n))!.part;
    return [
      { kind: 'voice-described', voice: 'double', fields: { part } },
      { kind: 'transmitter-worn', transmitter: `A${1 + (n % 3)}`, voice: 'double', ...before },
    ];
  },
  'name of a track': ofTrack(({ n, text: name, yes }) => ({
    name: yes ? `${1 + (n % 6)}` : name.slice(0, 60),
  })),
  'a mix or none': ofTrack(({ yes }) => ({ mix: yes })),
  'order of tracks': ofTrack(({ n }) => ({ order: n })),
  'a track struck': ofTrack(() => ({ struck: true })),
  'a track more': (_, { n, yes }) => [
    {
      kind: 'part-described',
      part: `new${n}`,
      fields: { type: 'track', name: `${n}`, mix: yes, order: n % 8 },
    },
  ],
  // It is printed where two voices are on it and on no track.
  'name of an input': (_, { text: name }) => [
    { kind: 'part-described', part: 'aes1', fields: { name: name.slice(0, 60) } },
  ],
  'a card handed over': (_, { n, text: name, yes }) => [
    {
      kind: 'handed-over',
      carriers: [{ name: `Card ${n}`, copies: n % 3 }],
      to: name.slice(0, 100) || 'Post',
      checked: yes,
      signature: { strokes: `${n % 50},20 30,5` },
    },
  ],
  'the card checked': (_, { n }) => [{ kind: 'card-checked', files: n, recordings: n, open: n % 3 }],
};
