import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = resolve(import.meta.dirname, '../src');

/** Which rooms a room may import from; packages are listed with the room that may use them. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  shared: [],
  time: ['shared'],
  facts: ['shared', 'time', 'zod/mini'],
  day: ['shared', 'time', 'facts'],
  matching: ['shared'],
  plan: ['shared', 'time', 'facts', 'day', 'matching'],
  radio: ['shared', 'time', 'facts', 'day'],
  upkeep: ['shared', 'time', 'facts', 'day'],
  wave: ['shared', 'time', 'fast-xml-parser'],
  reconcile: ['shared', 'time', 'facts', 'day', 'wave', 'matching'],
  report: ['shared', 'time', 'facts', 'day', 'jspdf'],
  commands: ['shared', 'time', 'facts', 'day', 'papaparse'],
  app: [
    'shared',
    'time',
    'facts',
    'day',
    'plan',
    'radio',
    'upkeep',
    'wave',
    'reconcile',
    'report',
    'commands',
    '@preact/signals',
  ],
  storage: ['shared', 'facts', 'app', 'idb'],
  offline: ['shared', 'app', 'workbox-window', 'workbox-core', 'workbox-precaching', 'workbox-routing'],
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
  'reconcile',
  'report',
  'commands',
];

interface Source {
  readonly path: string;
  readonly room: string;
  readonly text: string;
  readonly imports: readonly string[];
}

const sources: Source[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
  .map((name) => {
    const text = readFileSync(join(SRC, name), 'utf8');
    const imports = [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => match[1]!);
    return { path: name, room: name.includes('/') ? name.split('/')[0]! : '', text, imports };
  });

const roomOf = (source: Source, specifier: string): string =>
  specifier.startsWith('.')
    ? relative(SRC, resolve(SRC, dirname(source.path), specifier)).split('/')[0]!
    : specifier;

describe('the rooms', () => {
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

  test('screens speak to the façade, and never reach past it', () => {
    const past = ['commands', 'facts', 'storage', 'offline', 'idb', 'zod/mini'];
    const wrong = sources
      .filter(({ room }) => room === 'ui')
      .flatMap((source) => source.imports.map((specifier) => `${source.path} ${roomOf(source, specifier)}`))
      .filter((lead) => past.some((room) => lead.endsWith(` ${room}`)) || / workbox-/.test(lead));
    expect(wrong).toEqual([]);
    expect(sources.filter(({ path }) => path.startsWith('app/commands/')).length).toBeGreaterThan(0);
  });

  test('every button is the one of the kit, which knows nothing of the trade', () => {
    const raw = sources.filter(({ text }) => /<button\b/.test(text)).map(({ path }) => path);
    expect(raw).toEqual(['ui/kit/button.tsx']);
    const kit = sources.filter(({ path }) => path.startsWith('ui/kit/'));
    const beyond = kit.flatMap(({ path, imports }) =>
      imports
        .filter((name) => !name.startsWith('./') && !/^(preact|@preact)\b/.test(name))
        .map((name) => `${path}: ${name}`),
    );
    expect(beyond).toEqual([]);
  });

  test('pure rooms know no clock and no randomness', () => {
    const wrong = sources
      .filter(({ room }) => PURE.includes(room))
      .filter(({ text }) => /Date\.now\(|new Date\(\)|Math\.random\(|performance\./.test(text))
      .map(({ path }) => path);
    expect(wrong).toEqual([]);
  });

  test('no file imports itself through others', () => {
    const byPath = new Map(sources.map((source) => [source.path, source]));
    const next = (source: Source): Source[] =>
      source.imports
        .filter((specifier) => specifier.startsWith('.'))
        .map((specifier) => byPath.get(relative(SRC, resolve(SRC, dirname(source.path), specifier))))
        .filter((found) => found !== undefined);
    const done = new Set<string>();
    const cycles: string[][] = [];
    const visit = (source: Source, trail: string[]): void => {
      if (trail.includes(source.path)) cycles.push([...trail, source.path]);
      if (done.has(source.path) || trail.includes(source.path)) return;
      for (const found of next(source)) visit(found, [...trail, source.path]);
      done.add(source.path);
    };
    for (const source of sources) visit(source, []);
    expect(cycles).toEqual([]);
  });
});
