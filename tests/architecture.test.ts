import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = resolve(import.meta.dirname, '../src');

/** What any screen may use to draw, and the layers of the screens below a feature: features never import each other. */
const DRAWING = ['preact', 'preact/hooks', '@preact/signals'];
const BELOW = [...DRAWING, 'ui/kit', 'ui/words', 'ui/frame', 'shared', 'day', 'app'];
const FEATURES = [
  'ui/now',
  'ui/cast',
  'ui/rig',
  'ui/line',
  'ui/plan',
  'ui/radio',
  'ui/upkeep',
  'ui/card',
  'ui/wrap',
  'ui/picture',
  'ui/days',
  'ui/help',
  'ui/phones',
];

/** Which rooms a room may import from; packages are listed with the room that may use them. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  shared: [],
  time: ['shared'],
  facts: ['shared', 'time', 'zod/mini'],
  day: ['shared', 'time', 'facts'],
  matching: ['shared'],
  plan: ['shared', 'time', 'facts', 'day', 'matching'],
  radio: ['shared', 'time', 'facts', 'day'],
  upkeep: ['shared', 'time', 'facts', 'day', 'ltc'],
  wave: ['shared', 'time', 'fast-xml-parser'],
  ltc: ['shared', 'time'],
  reconcile: ['shared', 'time', 'facts', 'day', 'wave', 'matching'],
  report: ['shared', 'time', 'facts', 'day', 'jspdf'],
  callsheet: ['shared', 'papaparse'],
  exchange: ['shared', 'facts'],
  commands: ['shared', 'time', 'facts', 'day', 'callsheet'],
  app: [
    'shared',
    'time',
    'facts',
    'day',
    'plan',
    'radio',
    'upkeep',
    'wave',
    'ltc',
    'reconcile',
    'report',
    'callsheet',
    'commands',
    'exchange',
    '@preact/signals',
  ],
  storage: ['shared', 'facts', 'app', 'idb'],
  camera: ['shared', 'qr', 'qr/decode.js'],
  live: ['shared', 'app', '@nats-io/nats-core', '@nats-io/jetstream'],
  offline: ['shared', 'app', 'workbox-window', 'workbox-core', 'workbox-precaching', 'workbox-routing'],

  'ui/kit': [...DRAWING, 'shared'],
  'ui/words': ['ui/kit', 'shared', 'time', 'day', 'radio', 'upkeep', 'ltc', 'app'],
  'ui/frame': [...BELOW, 'time', 'radio', 'upkeep', 'ltc', 'report'],
  'ui/now': BELOW,
  'ui/cast': [...BELOW, 'pdfjs-dist/legacy/build/pdf.mjs'],
  'ui/rig': [...BELOW, 'radio', 'upkeep'],
  'ui/line': [...BELOW, 'time'],
  'ui/plan': [...BELOW, 'plan'],
  'ui/radio': [...BELOW, 'radio'],
  'ui/upkeep': [...BELOW, 'time', 'radio', 'upkeep', 'ltc', 'report'],
  'ui/card': [...BELOW, 'time', 'wave', 'reconcile', 'report'],
  'ui/wrap': [...BELOW, 'report'],
  'ui/picture': [...BELOW, 'report'],
  'ui/days': [...BELOW, 'report', 'sample-days', 'date-fns/lightFormat'],
  'ui/help': BELOW,
  'ui/phones': [...BELOW, 'camera'],
  'ui/shell': [...BELOW, ...FEATURES],
};

const PURE = [
  'shared',
  'time',
  'facts',
  'day',
  'matching',
  'plan',
  'radio',
  'upkeep',
  'wave',
  'ltc',
  'reconcile',
  'report',
  'callsheet',
  'commands',
  'exchange',
];

interface Source {
  readonly path: string;
  readonly room: string;
  readonly text: string;
  readonly imports: readonly string[];
}

/** The first folder under src; of the screens the second too. */
function roomAt(path: string): string {
  const [first, second, third] = path.split('/');
  if (second === undefined) return '';
  return first === 'ui' && third !== undefined ? `ui/${second}` : first!;
}

const sources: Source[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
  .map((name) => {
    const text = readFileSync(join(SRC, name), 'utf8');
    const imports = [...text.matchAll(/(?:from|import)\s*\(?\s*'([^'\n]+)'/g)].map((match) => match[1]!);
    return { path: name, room: roomAt(name), text, imports };
  });

const pathOf = (source: Source, specifier: string): string =>
  relative(SRC, resolve(SRC, dirname(source.path), specifier));

function roomOf(source: Source, specifier: string): string {
  if (!specifier.startsWith('.')) return specifier;
  const path = pathOf(source, specifier);
  return path.startsWith('../') ? path.split('/')[1]! : roomAt(path);
}

/** Every way round that leads from a place back to itself. */
function circles(next: ReadonlyMap<string, ReadonlySet<string>>): string[][] {
  const done = new Set<string>();
  const found: string[][] = [];
  const visit = (at: string, trail: readonly string[]): void => {
    if (trail.includes(at)) found.push([...trail.slice(trail.indexOf(at)), at]);
    if (done.has(at) || trail.includes(at)) return;
    for (const to of next.get(at) ?? []) visit(to, [...trail, at]);
    done.add(at);
  };
  for (const at of next.keys()) visit(at, []);
  return found;
}

/** Who leads to whom, by a name for each file: its own, or its folder's. */
function leads(files: readonly Source[], nameOf: (path: string) => string): Map<string, Set<string>> {
  const paths = new Set(files.map(({ path }) => path));
  const next = new Map<string, Set<string>>();
  for (const source of files) {
    const from = nameOf(source.path);
    if (!next.has(from)) next.set(from, new Set());
    for (const specifier of source.imports.filter((one) => one.startsWith('.'))) {
      const to = pathOf(source, specifier);
      if (paths.has(to) && (to === source.path || nameOf(to) !== from)) next.get(from)!.add(nameOf(to));
    }
  }
  return next;
}

describe('the rooms', () => {
  test('all stand in the table, but for what composes the app', () => {
    const elsewhere = sources.filter(({ room }) => !MAY_IMPORT[room]).map(({ path }) => path);
    expect(elsewhere).toEqual(['live-engine.ts', 'main.tsx']);
  });

  test('import only what the table allows', () => {
    const wrong = sources
      .filter(({ room }) => MAY_IMPORT[room])
      .flatMap((source) =>
        source.imports
          .map((specifier) => ({ from: source.path, to: roomOf(source, specifier), specifier }))
          .filter(({ to }) => to !== source.room && !MAY_IMPORT[source.room]!.includes(to)),
      );
    expect(wrong).toEqual([]);
    expect(sources.length).toBeGreaterThan(0);
  });

  test('every button is the one of the kit', () => {
    const raw = sources.filter(({ text }) => /<button\b/.test(text)).map(({ path }) => path);
    expect(raw).toEqual(['ui/kit/button.tsx']);
  });

  test('screens speak to the façade, and never reach past it', () => {
    const past = ['commands', 'facts', 'storage', 'offline', 'idb', 'zod/mini'];
    const wrong = sources
      .filter(({ room }) => room.startsWith('ui/'))
      .flatMap((source) => source.imports.map((specifier) => `${source.path} ${roomOf(source, specifier)}`))
      .filter((lead) => past.some((room) => lead.endsWith(` ${room}`)) || / workbox-/.test(lead));
    expect(wrong).toEqual([]);
    expect(sources.filter(({ path }) => path.startsWith('app/commands/')).length).toBeGreaterThan(0);
  });

  test('pure rooms know no clock and no randomness', () => {
    const wrong = sources
      .filter(({ room }) => PURE.includes(room))
      .filter(({ text }) => /Date\.now\(|new Date\(\)|Math\.random\(|performance\./.test(text))
      .map(({ path }) => path);
    expect(wrong).toEqual([]);
  });

  test('no file imports itself through others', () => {
    expect(circles(leads(sources, (path) => path))).toEqual([]);
  });

  test('no folder imports itself through others', () => {
    const next = leads(sources, dirname);
    expect(circles(next)).toEqual([]);
    expect([...next.keys()]).toEqual(expect.arrayContaining([...FEATURES, 'day/answers']));
  });

  test('no folder of the pure rooms has more than 25 files', () => {
    const folders = sources.filter(({ room }) => PURE.includes(room)).map(({ path }) => dirname(path));
    const isLarge = (folder: string): boolean => folders.filter((one) => one === folder).length > 25;
    expect([...new Set(folders.filter(isLarge))]).toEqual([]);
    expect(folders).toContain('day/answers');
  });

  test('a circle of folders would be found', () => {
    const next = new Map([
      ['a', new Set(['b'])],
      ['b', new Set(['c'])],
      ['c', new Set(['b'])],
    ]);
    expect(circles(next)).toEqual([['b', 'c', 'b']]);
  });
});
