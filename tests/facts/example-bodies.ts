import type { Draft, Fact } from '../../src/facts/fact.ts';

type BodyOf<Name> = Omit<Extract<Draft, { kind: Name }>, 'kind' | 'before'>;

export const TAKE_ID = '00000a-phonea00000';

const slate = { style: 'lettered', scene: '24', setup: 2 } as const;
const start = { frames: 90_000, rate: '25' } as const;

/** One body of every kind with every field said. Invented. */
export const EXAMPLE_BODIES: { [Name in Fact['kind']]: BodyOf<Name> } = {
  'day-described': {
    fields: {
      production: 'The Salt Road',
      label: 'Day 4',
      date: '2026-10-07',
      unit: 'Main',
      mixer: 'Mira Holm',
      boom: 'Jon Berg',
      utility: 'Ada Lund',
      contact: 'sound@example.org',
      recorder: 'Cart',
      sampleRate: 48_000,
      bitDepth: '24',
      timecodeRate: '25',
      fileLayout: 'poly',
      slateStyle: 'lettered',
      filePattern: '{slate}T{take}',
      remarks: 'Sea wind all day',
      sample: true,
    },
  },
  'voice-described': {
    voice: 'v1',
    fields: {
      kind: 'performer',
      part: 'Ines',
      person: 'Anna Berg',
      number: '1A',
      priority: 1,
      place: 'Table',
      struck: false,
    },
  },
  'part-described': {
    part: 'in-1',
    fields: { type: 'input', name: 'Input 1', order: 1, inputKind: 'mic', reserved: null },
  },
  'rig-laid': {
    parts: [
      { part: 'sel-1', fields: { type: 'selector', input: 'in-1', positions: ['Cart', 'Box'], bank: 'A' } },
      { part: 'out-1', fields: { type: 'output', outputKind: 'aes3', carries: ['ch-1', 'ch-2'] } },
      { part: 'tx-1', fields: { type: 'transmitter', wear: 'pack', khz: 518_200 } },
    ],
  },
  'transmitter-worn': { transmitter: 'tx-1', voice: 'v1', mic: 'lav' },
  'channels-tuned': { tunings: [{ channel: 'ch-1', transmitter: 'tx-1' }] },
  'leads-plugged': { leads: [{ lead: 'lead-1', from: 'out-1', to: 'in-1', position: 'b' }] },
  'selectors-thrown': { selectors: ['sel-1'], position: 'a' },
  'inputs-sent': { routes: [{ input: 'in-1', tracks: ['tr-2'] }] },
  'mute-set': { what: 'input', part: 'in-1', muted: true },
  'gang-declared': { track: 'tr-2', sources: ['ch-1', 'ch-2'] },
  'track-named': { track: 'tr-2', name: 'Crowd' },
  'voices-needed': { voices: [{ voice: 'v1', need: 'needed' }] },
  'roll-changed': { roll: '004' },
  'slate-called': { slate },
  'take-logged': {
    fields: {
      kind: 'take',
      slate,
      number: 3,
      start,
      length: { frames: 250, rate: '25' },
      rolledAt: 1_791_360_000_000,
      cutAt: 1_791_360_010_000,
      circled: true,
      noGood: false,
      falseStart: false,
      tailSlate: true,
      file: null,
    },
  },
  'take-described': { take: TAKE_ID, fields: { circled: false } },
  'note-added': { take: TAKE_ID, track: 'tr-2', text: 'Plane' },
  'clock-followed': { frames: 90_000, rate: '29.97DF', atMs: 1_791_360_000_000 },
  'fact-retracted': { targets: [TAKE_ID], by: 'undo' },
  'fact-moved': { target: TAKE_ID, to: null },
};
