import { checkOf } from '../../src/facts/day-file/day-file-lines.ts';
import { type Fact, KINDS } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { factId } from '../../src/shared/ids.ts';
import { EXAMPLE_BODIES } from './example-bodies.ts';

export const DAY = 'day-1';

export const envelopeOf = (counter: number, name: string, body: object): Envelope =>
  ({
    id: factId(counter, 'phonea00000'),
    day: DAY,
    kind: name,
    v: 1,
    at: 1_791_360_000_000 + counter,
    zone: 120,
    ...body,
  }) as Envelope;

/** One fact of every kind, and one of a kind not known here. */
export const everyKind = (): Envelope[] => [
  ...KINDS.map(({ name, version }, index) =>
    envelopeOf(index + 1, name, { v: version, ...EXAMPLE_BODIES[name as Fact['kind']] }),
  ),
  envelopeOf(90, 'snake-coiled', { length: 50, by: { unit: 'm' } }),
];

/** A file of these lines between a head and an end that fit them, whatever the lines are. */
export function sealed(lines: readonly string[], head: object = {}): string {
  const first = JSON.stringify({
    rollbook: 'day-file',
    version: 1,
    day: DAY,
    title: 'Day 4',
    facts: lines.length,
    ...head,
  });
  const end = JSON.stringify({ end: lines.length, check: checkOf([first, ...lines]) });
  return `${[first, ...lines, end].join('\n')}\n`;
}
