import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { type Fact, isKnown, KINDS, liftWith, readFact, versionOf } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { kind } from '../../src/facts/kinds/kind.ts';
import { factId, HIGHEST_COUNTER } from '../../src/shared/ids.ts';
import { EXAMPLE_BODIES, TAKE_ID } from './example-bodies.ts';

const ENVELOPE = { id: '00000b-phonea00000', day: 'day-1', v: 1, at: 1_791_360_000_000, zone: 120 };
const factWith = (name: string, body: object, more: object = {}): Record<string, unknown> => ({
  ...ENVELOPE,
  kind: name,
  ...body,
  ...more,
});
const example = (name: Fact['kind'], more: object = {}) => factWith(name, EXAMPLE_BODIES[name], more);
const problemOf = (raw: unknown) => {
  const read = readFact(raw);
  return read.ok ? null : read.problem;
};

describe('every kind of fact', () => {
  test.each(KINDS.map(({ name }) => name))(
    '%s: an example with every field said is accepted as it is',
    (name) => {
      const raw = example(name, { v: versionOf(name) });
      const read = readFact(structuredClone(raw));
      expect(read).toEqual({ ok: true, value: raw });
      expect(read.ok && isKnown(read.value)).toBe(true);
    },
  );

  test.each(KINDS.map(({ name }) => name))('%s: a body with nothing in it is refused', (name) => {
    const [first] = Object.keys(EXAMPLE_BODIES[name]);
    expect(problemOf(factWith(name, {}))).toEqual({ code: 'fact-damaged', where: first });
  });

  test('names are unique', () => {
    expect(new Set(KINDS.map(({ name }) => name)).size).toBe(KINDS.length);
  });
});

const LONG = 'x'.repeat(201);
const BROKEN: readonly (readonly [Fact['kind'], object, string])[] = [
  ['day-described', { fields: { production: LONG } }, 'fields.production'],
  ['day-described', { fields: { date: '7.10.2026' } }, 'fields.date'],
  ['day-described', { fields: { sampleRate: 48_000.5 } }, 'fields.sampleRate'],
  ['day-described', { fields: { sampleRate: '48000' } }, 'fields.sampleRate'],
  ['day-described', { fields: { bitDepth: 24 } }, 'fields.bitDepth'],
  ['day-described', { fields: { timecodeRate: '29,98' } }, 'fields.timecodeRate'],
  ['day-described', { fields: { remarks: 'x'.repeat(4001) } }, 'fields.remarks'],
  ['voice-described', { voice: 'two words' }, 'voice'],
  ['voice-described', { voice: '' }, 'voice'],
  ['voice-described', { fields: { kind: 'a singer' } }, 'fields.kind'],
  ['voice-described', { fields: { number: '1'.repeat(21) } }, 'fields.number'],
  ['voice-described', { fields: { priority: 0 } }, 'fields.priority'],
  ['voice-described', { fields: null }, 'fields'],
  ['part-described', { fields: { type: 'desk!' } }, 'fields.type'],
  ['part-described', { fields: { carries: ['ok', '<b>'] } }, 'fields.carries.1'],
  ['part-described', { fields: { khz: 0 } }, 'fields.khz'],
  ['rig-laid', { parts: [{ part: 'a', fields: {} }, { part: 'b' }] }, 'parts.1.fields'],
  ['rig-laid', { parts: [{ part: 'a', fields: { positions: ['one', 2] } }] }, 'parts.0.fields.positions.1'],
  ['rig-laid', { parts: {} }, 'parts'],
  ['transmitter-worn', { voice: undefined }, 'voice'],
  ['channels-tuned', { tunings: [] }, 'tunings'],
  ['channels-tuned', { tunings: [{ channel: 'c', transmitter: 7 }] }, 'tunings.0.transmitter'],
  ['leads-plugged', { leads: [{ lead: 'l', from: null, to: null, position: '' }] }, 'leads.0.position'],
  ['leads-plugged', { leads: Array(501).fill({ lead: 'l', from: null, to: null }) }, 'leads'],
  ['selectors-thrown', { position: 'A!' }, 'position'],
  ['inputs-sent', { routes: [{ input: 'i', tracks: 'tr-1' }] }, 'routes.0.tracks'],
  ['mute-set', { what: 'a track' }, 'what'],
  ['mute-set', { muted: 'yes' }, 'muted'],
  ['gang-declared', { sources: Array(65).fill('c') }, 'sources'],
  ['gang-ended', { sources: [] }, 'sources'],
  ['track-named', { name: LONG }, 'name'],
  ['voices-needed', { voices: [{ voice: 'v', need: 'may be' }] }, 'voices.0.need'],
  ['scenes-described', { scenes: [{ scene: 's', fields: { order: -1 } }] }, 'scenes.0.fields.order'],
  ['roll-changed', { roll: 4 }, 'roll'],
  ['recorder-set', { settings: { sampleRate: 7999 } }, 'settings.sampleRate'],
  ['recorder-set', { recorder: 'the cart' }, 'recorder'],
  ['recorders-rolling', { recorders: [] }, 'recorders'],
  ['roll-changed', { recorder: 'the cart' }, 'recorder'],
  ['voice-pinned', { pins: { alone: 'yes' } }, 'pins.alone'],
  ['out-marked', { out: 1 }, 'out'],
  ['conflict-resolved', { among: [TAKE_ID] }, 'among'],
  ['conflict-resolved', { stands: 'me' }, 'stands'],
  ['takes-joined', { into: null }, 'into'],
  ['report-sent', { route: 'by pigeon' }, 'route'],
  ['report-sent', { made: { paper: 'a3!', lines: 'take', columns: [], signature: '' } }, 'made.paper'],
  ['report-sent', { from: { known: { 'not a writer': 1 } } }, 'from.known.not a writer'],
  ['report-sent', { from: { known: {}, checks: [-1] } }, 'from.checks.0'],
  ['moves-weighed', { weights: { move: 0 } }, 'weights.move'],
  ['slate-called', { slate: { style: 'lettered', scene: '24', setup: -1 } }, 'slate.setup'],
  ['slate-called', { slate: { style: 'drawn by hand' } }, 'slate.style'],
  [
    'take-logged',
    { fields: { slate: { style: 'numbered', number: 'x', scene: '' } } },
    'fields.slate.number',
  ],
  ['take-logged', { fields: { number: 10_000 } }, 'fields.number'],
  ['take-logged', { fields: { start: { frames: 1.5, rate: '25' } } }, 'fields.start.frames'],
  ['take-logged', { fields: { length: { frames: 1, rate: '23,98' } } }, 'fields.length.rate'],
  ['take-logged', { fields: { rolledAt: -1 } }, 'fields.rolledAt'],
  ['take-described', { take: 'take 3' }, 'take'],
  ['note-added', { text: 'x'.repeat(4001) }, 'text'],
  ['note-added', { track: null }, 'track'],
  ['clock-followed', { frames: Number.POSITIVE_INFINITY }, 'frames'],
  ['clock-followed', { frames: Number.NaN }, 'frames'],
  ['guards-set', { guards: { carrierKhz: -1 } }, 'guards.carrierKhz'],
  ['guards-set', { guards: { tvRaster: ['uhf'] } }, 'guards.tvRaster'],
  ['carrier-described', { fields: { khz: 0 } }, 'fields.khz'],
  ['band-described', { fields: { rasterKhz: 0 } }, 'fields.rasterKhz'],
  ['transmitters-switched', { transmitters: [] }, 'transmitters'],
  ['cells-changed', { runtimeHours: Number.POSITIVE_INFINITY }, 'runtimeHours'],
  ['cells-changed', { runtimeHours: 0 }, 'runtimeHours'],
  ['devices-jammed', { from: null }, 'from'],
  ['timecode-compared', { offMs: '12' }, 'offMs'],
  ['devices-described', { fields: { ppm: Number.NaN } }, 'fields.ppm'],
  ['card-described', { fields: { bytes: 0 } }, 'fields.bytes'],
  ['shift-planned', { shift: { mealAtMs: '13:00' } }, 'shift.mealAtMs'],
  ['run-described', { fields: { metres: 10_000 } }, 'fields.metres'],
  ['leads-described', { leads: [{ lead: 'l', fields: { circuit: 9 } }] }, 'leads.0.fields.circuit'],
  ['fact-retracted', { targets: [TAKE_ID, 'x'] }, 'targets.1'],
  ['fact-retracted', { by: 'nobody at all' }, 'by'],
  ['fact-moved', { to: undefined }, 'to'],
  ['card-checked', { files: -1 }, 'files'],
  ['card-checked', { open: 0.5 }, 'open'],
  ['phone-named', { name: 7 }, 'name'],
  ['mic-mounted', { voice: 'v1', transmitter: 'tx-1', mic: { place: 7 } }, 'mic.place'],
  ['listener-described', { fields: { cellsAtMs: '07:00' } }, 'fields.cellsAtMs'],
  ['writer-admitted', { key: 'b7' }, 'key'],
  ['writer-removed', { upTo: -1 }, 'upTo'],
  ['day-passed-on', { signature: '' }, 'signature'],
  ['move-ticked', { to: null }, 'to'],
  ['day-wrapped', { wrapped: 'yes' }, 'wrapped'],
  ['difference-kept', { take: 'take 3' }, 'take'],
  ['difference-kept', { file: LONG }, 'file'],
  ['handed-over', { carriers: [] }, 'carriers'],
  ['handed-over', { signature: { strokes: 'M1 2' } }, 'signature.strokes'],
];

const BROKEN_ENVELOPES: readonly (readonly [object, string])[] = [
  [{ id: 'k' }, 'id'],
  [{ id: factId(HIGHEST_COUNTER + 1, 'phonea00000') }, 'id'],
  [{ day: '' }, 'day'],
  [{ kind: 'Roll Changed' }, 'kind'],
  [{ kind: '__proto__' }, 'kind'],
  [{ v: 0 }, 'v'],
  [{ at: -1 }, 'at'],
  [{ zone: 901 }, 'zone'],
  [{ batch: 'x' }, 'batch'],
  [{ before: 5 }, 'before'],
  [{ seen: { phoneb: HIGHEST_COUNTER + 1 } }, 'seen.phoneb'],
  [{ seen: { constructor: 1 } }, 'seen.constructor'],
];

describe('a damaged fact is refused with the path of what is wrong', () => {
  test.each(BROKEN)('%s %j: %s', (name, wrong, where) => {
    expect(problemOf(example(name, wrong))).toEqual({ code: 'fact-damaged', where });
  });

  test.each(BROKEN_ENVELOPES)('envelope %j: %s', (wrong, where) => {
    expect(problemOf(example('roll-changed', wrong))).toEqual({ code: 'fact-damaged', where });
  });

  test('every kind has a broken example', () => {
    const tried = new Set<string>(BROKEN.map(([name]) => name));
    expect(KINDS.map(({ name }) => name).filter((name) => !tried.has(name))).toEqual([]);
  });

  test.each([null, undefined, 7, 'fact', [], true])('%j is no fact', (raw) => {
    expect(problemOf(raw)?.code).toBe('fact-damaged');
  });
});

describe('a fact from a newer version', () => {
  test.each([
    ['of a kind not known here', factWith('snake-coiled', { length: 50 })],
    ['of a known kind in a version not known here', example('roll-changed', { v: 2, roll: { number: 4 } })],
    ['of a kind named like something every object has', factWith('constructor', {})],
  ])('%s is kept as it is and marked', (_, raw) => {
    expect(readFact(raw)).toEqual({ ok: true, value: { ...raw, unknown: true } });
  });

  test('fields this version does not know survive in a kind it knows', () => {
    const raw = example('roll-changed', { colour: 'red', seen: { phoneb: 4 } });
    expect(readFact(raw)).toEqual({ ok: true, value: raw });
  });

  test('is understood by the app that knows its kind, even if stored with the mark', () => {
    const read = readFact(example('roll-changed', { unknown: true }));
    expect(read).toEqual({ ok: true, value: example('roll-changed') });
  });
});

/** A kind whose body was a name, then a list of names, then a list of named things. */
const thrice = kind('thrice-changed', z.object({ things: z.array(z.object({ name: z.string() })) }), 3, {
  1: ({ name, ...rest }) => ({ ...rest, names: [name] }),
  2: ({ names, ...rest }) => ({ ...rest, things: (names as string[]).map((name) => ({ name })) }),
});

describe('an old fact is lifted one version at a time', () => {
  test.each([
    [1, { name: 'A' }],
    [2, { names: ['A'] }],
    [3, { things: [{ name: 'A' }] }],
  ])('from version %i', (v, body) => {
    const old = factWith('thrice-changed', body, { v, batch: TAKE_ID }) as Envelope;
    const before = structuredClone(old);
    expect(liftWith(thrice, old)).toEqual(
      factWith('thrice-changed', { things: [{ name: 'A' }] }, { v: 3, batch: TAKE_ID }),
    );
    expect(old).toEqual(before);
  });

  test('a missing step is a bug and throws', () => {
    const gap = kind('gap-left', z.object({}), 3, { 1: (body) => body });
    expect(() => liftWith(gap, factWith('gap-left', {}) as Envelope)).toThrow(
      'No lift for gap-left version 2',
    );
  });
});

describe('old journals', () => {
  test('a lead named only because another pushed it out is not read; one unplugged by itself is', () => {
    const body = (leads: readonly object[]) => {
      const read = readFact(factWith('leads-plugged', { leads }));
      return read.ok && isKnown(read.value) && read.value.kind === 'leads-plugged' && read.value.leads;
    };
    const plugged = { lead: 'lead-1', from: 'out-1', to: 'in-1' };
    const hanging = { lead: 'lead-2', from: 'out-2', to: null };
    expect(body([hanging, plugged])).toEqual([plugged]);
    expect(body([hanging])).toEqual([hanging]);
    expect(problemOf(factWith('leads-plugged', { leads: [null] }))).toMatchObject({ code: 'fact-damaged' });
    expect(problemOf(factWith('leads-plugged', { leads: 'all' }))).toMatchObject({ code: 'fact-damaged' });
  });
});
