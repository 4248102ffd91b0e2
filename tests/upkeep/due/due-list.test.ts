import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Cells, planCells } from '../../../src/upkeep/due/batteries.ts';
import { cardLeft } from '../../../src/upkeep/due/card-left.ts';
import { CAUTIONS } from '../../../src/upkeep/due/cautions.ts';
import { dueList } from '../../../src/upkeep/due/due-list.ts';
import { type Jam, planJams } from '../../../src/upkeep/due/jams.ts';
import { unwrap } from '../unwrap.ts';

const HOUR = 3_600_000;
const at = (clock: string): number => Date.parse(`2031-05-06T${clock}:00Z`);

function listAt(now: string, takeOpen: boolean) {
  const nowMs = at(now);
  const cells: Cells[] = [
    { device: 'TX1', freshAtMs: at('07:00'), runtimeHours: 5, basis: 'measured' },
    { device: 'TX2', freshAtMs: at('07:00'), runtimeHours: 3.5, basis: 'planned' },
    { device: 'TX3', freshAtMs: at('07:00'), runtimeHours: undefined, basis: 'planned' },
  ];
  const jams: Jam[] = [
    { device: 'slate', from: 'recorder', atMs: at('07:00'), tolerancePpm: 5 },
    { device: 'camera A', from: 'recorder', atMs: at('07:00'), tolerancePpm: 0 },
    { device: 'camera B', from: 'recorder', atMs: at('07:00'), tolerancePpm: -1 },
  ];
  const card = {
    card: 'CF 1',
    capacityBytes: 16e9,
    usedBytes: 0,
    format: { tracks: 8, sampleRate: 48_000, bits: 24 as const },
    recordedMs: 2 * HOUR,
  };
  const day = { nowMs, takeOpen, mealAtMs: at('13:00'), wrapAtMs: at('19:00') };
  return dueList({
    nowMs,
    cells: unwrap(planCells(cells, day)),
    jams: unwrap(planJams(jams, { nowMs, takeOpen, rate: '25' })),
    cards: [unwrap(cardLeft(card, { ...day, callAtMs: at('07:00') }))],
  });
}

describe('the due list', () => {
  test('puts cells, jams and cards in one order of time, what has no moment last', () => {
    const { items } = listAt('11:00', false);
    expect(
      items.map(({ kind, name, dueAtMs, action }) => [
        kind,
        name,
        dueAtMs === undefined ? '' : new Date(dueAtMs).toISOString().slice(11, 16),
        action,
      ]),
    ).toEqual([
      ['jam', 'slate', '09:13', 'now'],
      ['cells', 'TX2', '09:48', 'now'],
      ['cells', 'TX1', '11:00', 'now'],
      ['card', 'CF 1', '13:38', 'later'],
      ['jam', 'camera A', '', 'later'],
    ]);
  });

  test('gives every item its reasons', () => {
    const { items } = listAt('11:00', false);
    expect(items.map(({ name, reasons }) => [name, ...reasons.map(({ code }) => code)])).toEqual([
      ['slate', 'drift'],
      ['TX2', 'cells-empty', 'cells-not-to-meal', 'cells-not-to-wrap', 'runtime-only-planned'],
      ['TX1', 'cells-margin', 'cells-not-to-meal', 'cells-not-to-wrap'],
      ['CF 1', 'card-left', 'card-not-to-wrap'],
      ['camera A', 'drift'],
    ]);
  });

  test('never says now during an open take', () => {
    const { items } = listAt('11:00', true);
    expect(items.map(({ action }) => action)).toEqual(['at-cut', 'at-cut', 'at-cut', 'later', 'later']);
  });

  test('names what it could not plan, and why', () => {
    expect(
      listAt('11:00', false).unknown.map(({ kind, name, problem }) => [kind, name, problem.code]),
    ).toEqual([
      ['cells', 'TX3', 'no-runtime'],
      ['jam', 'camera B', 'quantity-out-of-range'],
    ]);
  });

  test('is empty for an empty day', () => {
    const nothing = { due: [], unknown: [] };
    expect(dueList({ nowMs: 0, cells: nothing, jams: nothing, cards: [] })).toEqual({
      items: [],
      unknown: [],
    });
  });
});

const UI = resolve(import.meta.dirname, '../../../src/ui');

describe('cautions', () => {
  test('are short, and each belongs to a place where its figures are shown', () => {
    const placed = new Set(
      readdirSync(UI, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.tsx'))
        .flatMap((name) => [...readFileSync(join(UI, name), 'utf8').matchAll(/<Cautions of=\{\[(.*?)\]\}/gs)])
        .flatMap(([, places]) => [...places!.matchAll(/'([\w-]+)'/g)].map(([, place]) => place)),
    );
    expect([...placed].sort()).toEqual(Object.keys(CAUTIONS).sort());
    for (const words of Object.values(CAUTIONS)) expect(words.length).toBeLessThan(200);
  });

  test('send the reader to those who decide: licence, airline, electrician', () => {
    expect(CAUTIONS.radio).toContain('licence');
    expect(CAUTIONS['air-travel']).toContain('the airline');
    expect(CAUTIONS.mains).toContain('qualified electrician');
    expect(CAUTIONS.mains).toContain('local code');
  });
});
