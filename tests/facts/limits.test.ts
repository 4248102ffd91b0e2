import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/facts/fact.ts';
import { KINDS, readFact, versionOf } from '../../src/facts/fact.ts';
import { EXAMPLE_BODIES, TAKE_ID } from './example-bodies.ts';
import {
  amount,
  factIdText,
  flag,
  hexadecimal,
  idText,
  type Limit,
  list,
  moment,
  oneOf,
  orNull,
  text,
  whole,
  words,
} from './limit.ts';

const slate = oneOf(
  [
    { style: 'lettered', scene: 'x'.repeat(200), setup: 0 },
    { style: 'lettered', scene: '', setup: 20_000 },
    { style: 'numbered', number: 0, scene: 'x'.repeat(200) },
    { style: 'numbered', number: 999_999, scene: '' },
  ],
  [
    { style: 'lettered', scene: 'x'.repeat(201), setup: 0 },
    { style: 'lettered', scene: '', setup: -1 },
    { style: 'lettered', scene: '', setup: 20_001 },
    { style: 'numbered', number: -1, scene: '' },
    { style: 'numbered', number: 1_000_000, scene: '' },
    { style: 'numbered', number: 1, scene: 'x'.repeat(201) },
    { style: 'numbered', scene: '', setup: 1 },
    { style: 'lettered', scene: '', number: 1 },
  ],
);
/** Every rate there is (SMPTE ST 12-1:2014, scope; 30DF is common practice). */
const RATES = words('23.976 24 25 29.97 29.97DF 30 30DF 47.952 48 50 59.94 59.94DF 60');
const stamp = (path: string): Limits => ({
  [path]: orNull(oneOf([{ frames: 0, rate: '24' }], [{ frames: 0 }, { rate: '24' }])),
  [`${path}.frames`]: whole(0, 100_000_000),
  [`${path}.rate`]: RATES,
});
const frequency = whole(1, 100_000_000);
const distance = whole(0, 10_000);
const weight = whole(1, 99);
const devices: Limits = { devices: list(1, 500, 'tx-1'), 'devices.0': idText };

type Limits = Readonly<Record<string, Limit>>;
const DATABASE_NAME = oneOf(['phonea', '00000z'], ['phone', 'phoneab', 'Phonea', 7]);
const BY_OWNER: Limits = {
  number: whole(1, 1_000_000),
  owner: hexadecimal(32),
  signature: hexadecimal(128),
};
const within = (path: string, limits: Limits): Limits =>
  Object.fromEntries(Object.entries(limits).map(([name, limit]) => [`${path}.${name}`, limit]));

const PART: Limits = {
  type: words('recorder input track send receiver channel output selector transmitter'),
  name: text(200),
  order: whole(0, 100_000),
  struck: flag,
  recorder: idText,
  inputKind: words('mic line aes3 return slot network'),
  mix: flag,
  tap: words('pre post'),
  place: words('cart bag remote'),
  receiver: idText,
  module: text(200),
  outputKind: words('analogue aes3 network slot'),
  carries: list(0, 16, 'ch-1'),
  'carries.0': idText,
  reserved: orNull(words('comms playback timecode')),
  input: idText,
  positions: list(2, 2, 'A'),
  bank: text(200),
  wear: words('pack plug-on handheld'),
  khz: orNull(frequency),
};

const TAKE: Limits = {
  kind: words('take pickup wild tone mos'),
  slate,
  number: whole(0, 9999),
  ...stamp('start'),
  ...stamp('length'),
  rolledAt: moment,
  cutAt: moment,
  circled: flag,
  noGood: flag,
  falseStart: flag,
  tailSlate: flag,
  unit: words('main second splinter'),
  file: orNull(text(200)),
};

const SETTINGS: Limits = {
  sampleRate: whole(8000, 384_000),
  bitDepth: words('16 24 32 32f'),
  timecodeRate: words('23.976 24 25 29.97 29.97DF 30'),
  fileLayout: words('poly mono'),
  filePattern: text(200),
};

/** What every field of every kind may be, at its ends and just beyond. */
const LIMITS: { readonly [Name in Fact['kind']]: Limits } = {
  'day-described': within('fields', {
    production: text(200),
    label: text(200),
    date: oneOf(['2026-10-07', ''], ['7.10.2026', '2026-10-7', '2026-10-07 ']),
    unit: text(200),
    mixer: text(200),
    boom: text(200),
    utility: text(200),
    contact: text(200),
    mixerContact: text(200),
    boomContact: text(200),
    utilityContact: text(200),
    tone: text(200),
    toneRoll: text(200),
    recorder: text(200),
    ...SETTINGS,
    slateStyle: words('lettered numbered'),
    remarks: text(4000),
    sample: flag,
  }),
  'voice-described': {
    voice: idText,
    ...within('fields', {
      kind: words('performer boom plant feed'),
      part: text(200),
      person: text(200),
      number: text(20),
      priority: whole(1, 999),
      place: text(200),
      pickUp: text(40),
      onSet: text(40),
      struck: flag,
    }),
  },
  'part-described': { part: idText, ...within('fields', PART) },
  'rig-laid': {
    parts: list(0, 2000, { part: 'in-1', fields: {} }),
    'parts.0.part': idText,
    ...within('parts.0.fields', PART),
  },
  'transmitter-worn': { transmitter: idText, voice: orNull(idText), mic: text(200) },
  'channels-tuned': {
    tunings: list(1, 500, { channel: 'ch-1', transmitter: null }),
    'tunings.0.channel': idText,
    'tunings.0.transmitter': orNull(idText),
  },
  'leads-plugged': {
    leads: list(1, 500, { lead: 'l', from: null, to: null }),
    'leads.0.lead': idText,
    'leads.0.from': orNull(idText),
    'leads.0.to': orNull(idText),
    'leads.0.position': words('a b'),
  },
  'selectors-thrown': { selectors: list(1, 500, 'sel-1'), 'selectors.0': idText, position: words('a b') },
  'inputs-sent': {
    routes: list(1, 500, { input: 'in-1', tracks: [] }),
    'routes.0.input': idText,
    'routes.0.tracks': list(0, 64, 'tr-1'),
    'routes.0.tracks.0': idText,
  },
  'mute-set': { what: words('input transmitter'), part: idText, muted: flag },
  'gang-declared': { track: idText, sources: list(0, 64, 'ch-1'), 'sources.0': idText },
  'gang-ended': { track: idText, sources: list(1, 64, 'ch-1'), 'sources.0': idText },
  'track-named': { track: idText, name: orNull(text(200)) },
  'voices-needed': {
    voices: list(1, 500, { voice: 'v1', need: 'done' }),
    'voices.0.voice': idText,
    'voices.0.need': words('needed resting done'),
    scene: text(200),
  },
  'scenes-described': {
    scenes: list(1, 500, { scene: 's1', fields: {} }),
    'scenes.0.scene': idText,
    ...within('scenes.0.fields', {
      number: text(20),
      intExt: text(20),
      set: text(200),
      dayNight: text(40),
      pages: text(20),
      synopsis: text(4000),
      crowd: text(200),
      voices: list(0, 200, 'v1'),
      'voices.0': idText,
      others: list(0, 200, '9'),
      'others.0': text(200),
      order: whole(0, 100_000),
      state: words('to-shoot done moved'),
      struck: flag,
    }),
  },
  'roll-changed': { roll: text(200), recorder: idText },
  'recorders-rolling': { recorders: list(1, 16, 'recorder'), 'recorders.0': idText },
  'recorder-set': { recorder: idText, ...within('settings', SETTINGS) },
  'voice-pinned': {
    voice: idText,
    pins: orNull(oneOf([{}], [[], 'all'])),
    ...within('pins', { transmitter: idText, channel: idText, input: idText, track: idText, alone: flag }),
    recorder: idText,
  },
  'out-marked': { part: idText, out: flag },
  'moves-weighed': within('weights', {
    fit: weight,
    move: weight,
    borrow: weight,
    retune: weight,
    throwSelector: weight,
    replug: weight,
    route: weight,
  }),
  'slate-called': { slate },
  'take-logged': within('fields', TAKE),
  'take-described': { take: factIdText, ...within('fields', TAKE) },
  'note-added': { take: factIdText, track: idText, text: text(4000) },
  'clock-followed': {
    frames: whole(0, 100_000_000),
    rate: RATES,
    atMs: moment,
    ...within('heard', {
      frames: whole(2, 100_000_000),
      spreadMs: amount(0, 1000),
      delayMs: amount(-1000, 1000),
    }),
  },
  'guards-set': within('guards', {
    carrierKhz: distance,
    twoToneThirdKhz: distance,
    threeToneThirdKhz: distance,
    twoToneFifthKhz: distance,
    tvEdgeKhz: distance,
    tvRaster: words('us uhf-8-mhz'),
  }),
  'carrier-described': {
    carrier: idText,
    ...within('fields', {
      name: text(200),
      khz: orNull(frequency),
      spacingKhz: orNull(distance),
      heard: flag,
      struck: flag,
    }),
  },
  'band-described': {
    band: idText,
    ...within('fields', {
      use: words('occupied tunable'),
      name: text(200),
      fromKhz: frequency,
      toKhz: frequency,
      rasterKhz: whole(1, 1_000_000),
      group: text(40),
      spacingKhz: orNull(distance),
      struck: flag,
    }),
  },
  'transmitters-switched': { transmitters: list(1, 500, 'tx-1'), 'transmitters.0': idText, on: flag },
  'cells-changed': { ...devices, atMs: moment, runtimeHours: amount(0.05, 1000) },
  'devices-jammed': { ...devices, from: idText, atMs: moment },
  'timecode-compared': {
    device: idText,
    from: idText,
    atMs: moment,
    offMs: amount(-86_400_000, 86_400_000),
    doubtMs: amount(0, 86_400_000),
  },
  'devices-described': {
    ...devices,
    ...within('fields', {
      name: text(200),
      runtimeHours: orNull(amount(0.05, 1000)),
      runtimeBasis: words('measured planned'),
      hasCells: flag,
      hasTimecode: flag,
      ppm: orNull(amount(0, 10_000)),
      struck: flag,
    }),
  },
  'card-described': {
    card: idText,
    ...within('fields', {
      name: text(200),
      recorder: idText,
      bytes: whole(1, 1e15),
      usedBytes: whole(0, 1e15),
      tracks: orNull(whole(1, 512)),
      inAtMs: orNull(moment),
      outAtMs: orNull(moment),
      copies: whole(0, 20),
      struck: flag,
    }),
  },
  'shift-planned': within('shift', {
    callAtMs: orNull(moment),
    mealAtMs: orNull(moment),
    wrapAtMs: orNull(moment),
  }),
  'run-described': {
    run: idText,
    ...within('fields', {
      type: words('network dc'),
      name: text(200),
      metres: amount(0.1, 1000),
      watts: orNull(amount(0.001, 10_000)),
      cable: text(40),
      powerClass: whole(0, 8),
      celsius: amount(-60, 120),
      connectorOhms: amount(0, 20),
      channels: whole(0, 512),
      channelsAStream: whole(1, 512),
      recorder: orNull(idText),
      samplesAPacket: whole(1, 4096),
      linkMbps: whole(1, 1_000_000),
      volts: amount(0.1, 60),
      awg: whole(0, 40),
      deviceMinVolts: orNull(amount(0, 60)),
      batteryWattHours: orNull(amount(0.01, 1_000_000)),
      struck: flag,
    }),
  },
  'leads-described': {
    leads: list(1, 500, { lead: 'l', fields: {} }),
    'leads.0.lead': idText,
    ...within('leads.0.fields', {
      name: text(200),
      ends: words('xlr snake other'),
      snake: text(200),
      circuit: whole(1, 8),
      carries: words('analogue aes3'),
      words: text(200),
    }),
  },
  'fact-retracted': {
    targets: list(1, 2000, TAKE_ID),
    'targets.0': factIdText,
    by: words('hand undo redo'),
  },
  'fact-moved': { target: factIdText, to: orNull(factIdText) },
  'report-sent': {
    letter: text(8),
    route: words('share download copy mail'),
    files: list(0, 20, 'a.pdf'),
    'files.0': text(200),
    to: list(0, 50, 'a@example.org'),
    'to.0': text(200),
    ...within('made', {
      paper: words('a4 letter'),
      lines: words('take track'),
      columns: list(0, 60, 'file'),
      'columns.0': text(40),
      signature: text(4000),
      matters: list(0, 20, 'roll'),
      'matters.0': text(200),
      form: whole(1, 1000),
      'issued.at': moment,
      'issued.zone': whole(-900, 900),
    }),
    ...within('from', {
      known: oneOf(
        [{}, { phonea00000: 0 }, { phonea00000: 500_000_000 }],
        [{ phonea00000: -1 }, { phonea00000: 500_000_001 }, { phonea0000: 1 }, { phonea000000: 1 }],
      ),
      unread: list(0, 2000, TAKE_ID),
      'unread.0': factIdText,
      checks: list(0, 20, 1),
      'checks.0': whole(0, 2 ** 32 - 1),
    }),
  },
  'card-checked': {
    files: whole(0, 100_000),
    recordings: whole(0, 100_000),
    open: whole(0, 100_000),
    matched: whole(0, 100_000),
    without: list(0, 5000, TAKE_ID),
    'without.0': factIdText,
    unsure: list(0, 5000, TAKE_ID),
    'unsure.0': factIdText,
    unlogged: whole(0, 100_000),
    stopped: flag,
    bytes: whole(0, 1e15),
    names: list(0, 5000, { take: TAKE_ID, files: [{ name: 'A.wav' }] }),
    ...within('names.0', {
      take: factIdText,
      recorder: idText,
      files: list(1, 500, { name: 'A.wav' }),
      'files.0.name': text(200),
      'files.0.track': idText,
    }),
    cards: list(0, 16, { recorder: 'recorder', takes: 3 }),
    ...within('cards.0', {
      recorder: idText,
      takes: whole(0, 100_000),
      only: list(0, 5000, TAKE_ID),
      'only.0': factIdText,
    }),
  },
  'handed-over': {
    carriers: list(1, 50, { name: 'Card A' }),
    ...within('carriers.0', { name: text(200), card: idText, copies: whole(0, 20) }),
    to: text(200),
    role: text(200),
    files: whole(0, 1_000_000),
    bytes: whole(0, 1e15),
    checked: flag,
    ...within('signature', {
      strokes: oneOf(
        ['', '1,2', '10,20 -3,4;5,6', `${'1,2 '.repeat(1999)}1,2`],
        ['1', '1,2,3', '1,2 ', 'M1,2', '10000,2', `${'1,2 '.repeat(2000)}1,2`],
      ),
      typed: text(200),
    }),
  },
  'conflict-resolved': {
    link: text(200),
    among: list(2, 64, TAKE_ID),
    'among.0': factIdText,
    stands: orNull(factIdText),
  },
  'takes-joined': { take: factIdText, into: factIdText },
  'mic-mounted': {
    voice: idText,
    transmitter: orNull(idText),
    ...within('mic', {
      model: orNull(text(100)),
      colour: orNull(text(100)),
      place: orNull(text(100)),
      cable: orNull(text(100)),
      rubs: orNull(text(100)),
    }),
    carried: flag,
  },
  'listener-described': {
    listener: idText,
    ...within('fields', {
      name: text(200),
      receiver: text(200),
      part: orNull(idText),
      hears: text(200),
      channel: text(200),
      cellsAtMs: orNull(moment),
      handedOut: flag,
      struck: flag,
    }),
  },
  'phone-named': { name: text(200), job: text(200) },
  'writer-admitted': {
    ...BY_OWNER,
    key: hexadecimal(64, '04', 128),
    role: words('owner writer onlooker'),
    name: text(200),
    job: text(200),
    database: DATABASE_NAME,
    agreement: hexadecimal(64, '04', 128),
  },
  'writer-removed': {
    ...BY_OWNER,
    writer: hexadecimal(32),
    database: DATABASE_NAME,
    counted: whole(0, 1_000_000_000),
    upTo: whole(0, 500_000_000),
    ...within('newKey', {
      number: whole(2, 20),
      boxes: oneOf(
        [{}, { ['1e'.repeat(16)]: '0a'.repeat(80) }, { ['1e'.repeat(16)]: `04${'0a'.repeat(112)}` }],
        [{ '1e': '0a'.repeat(80) }, { ['1e'.repeat(16)]: '0a'.repeat(79) }, []],
      ),
    }),
  },
  'day-passed-on': { ...BY_OWNER, to: hexadecimal(32), counted: whole(0, 1_000_000_000) },
  'move-ticked': { link: text(200), to: text(400), ticked: flag },
  'day-wrapped': { wrapped: flag },
  'difference-kept': {
    code: text(200),
    take: factIdText,
    file: text(200),
    track: idText,
    values: text(4000),
    as: words('log card file-missing'),
  },
};

/** The example with another value at a path such as 'leads.0.to'. */
function withAt(name: Fact['kind'], path: string, value: unknown): Record<string, unknown> {
  const fact: Record<string, unknown> = {
    ...{ id: '00000b-phonea00000', day: 'day-1', kind: name, v: versionOf(name), at: 1, zone: 0 },
    ...structuredClone(EXAMPLE_BODIES[name]),
  };
  const steps = path.split('.');
  const last = steps.pop()!;
  let part: Record<string, unknown> = fact;
  for (const step of steps) {
    part[step] ??= /^\d+$/.test(last) ? [] : {};
    part = part[step] as Record<string, unknown>;
  }
  part[last] = value;
  return fact;
}

const ROWS = Object.entries(LIMITS).flatMap(([name, limits]) =>
  Object.entries(limits).map(([path, limit]) => [name as Fact['kind'], path, limit] as const),
);

describe('the limits of a field', () => {
  test.each(ROWS)('%s %s', (name, path, { good, bad }) => {
    for (const value of good) {
      expect(readFact(withAt(name, path, value)), `${value}`).toMatchObject({ ok: true });
    }
    for (const value of bad) {
      const read = readFact(withAt(name, path, value));
      expect(read, `${value}`).toMatchObject({ ok: false, problem: { code: 'fact-damaged' } });
      // A value that is none of several shapes is told by the field that holds them.
      if (!read.ok) expect(`${read.problem.where}.`.startsWith(`${path}.`), `${value}`).toBe(true);
    }
  });
});

interface Def {
  readonly type: string;
  readonly shape?: Readonly<Record<string, unknown>>;
  readonly innerType?: unknown;
  readonly element?: unknown;
}

/** Every path of a shape at which a value stands. */
function pathsOf(shape: unknown, path = ''): string[] {
  const def = (shape as { _zod: { def: Def } })._zod.def;
  const below = (name: string): string => (path ? `${path}.${name}` : name);
  if (def.innerType) return pathsOf(def.innerType, path);
  if (def.shape) return Object.entries(def.shape).flatMap(([name, field]) => pathsOf(field, below(name)));
  return def.element ? [path, ...pathsOf(def.element, below('0'))] : [path];
}

test.each(KINDS.map(({ name, body }) => [name, body] as const))(
  '%s has a limit for every field',
  (name, body) => {
    const paths = pathsOf(body).filter((path) => !/positions\.0$/.test(path));
    expect(paths.filter((path) => !Object.hasOwn(LIMITS[name], path))).toEqual([]);
  },
);
