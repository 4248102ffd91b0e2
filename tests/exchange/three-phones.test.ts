import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { Collector } from '../../src/exchange/codes/collector.ts';
import { readHave, writeHave } from '../../src/exchange/codes/have-code.ts';
import { readPiece, seriesOf } from '../../src/exchange/codes/series.ts';
import { haveOf, lackedBy, nothingHeld } from '../../src/exchange/have.ts';
import { packParcel, unpackParcel } from '../../src/exchange/parcel.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { mergeFacts } from '../../src/facts/merge-facts.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { MORNING, take } from '../day/say.ts';
import { ORDERS_OF_THREE, SetPhone } from '../day/three-phones.ts';
import { nodePacking } from './node-packing.ts';

/** What the other phone reads when every third code is lost, and how many pictures were shown. */
async function overCodes(facts: readonly Envelope[]) {
  const bytes = await packParcel(nodePacking, {
    day: facts[0]!.day,
    title: 'Day',
    sender: 'Mira Holm',
    facts,
  });
  const series = seriesOf(bytes);
  const collector = new Collector();
  for (let number = 0; ; number += 1) {
    if (number % 3 === 2) continue;
    collector.take(readPiece(series.code(number))!);
    const whole = collector.bytes();
    if (!whole) continue;
    const read = await unpackParcel(nodePacking, whole);
    if (!read.ok) throw new Error(read.problem.code);
    return { facts: read.value.facts, sender: read.value.sender, pictures: number + 1, count: series.count };
  }
}

/** One phone reads another: its own code first, then what it lacks. */
async function exchange(reader: SetPhone, giver: SetPhone): Promise<void> {
  const have = readHave(writeHave(haveOf('day-1', reader.database, reader.facts)))!;
  const lacked = lackedBy(have, giver.facts);
  if (lacked.length === 0) return;
  const merged = mergeFacts(reader.facts, (await overCodes(lacked)).facts);
  if (!merged.ok) throw new Error(merged.problem.code);
  const others = new SetPhone(3, 0);
  others.facts.push(...(merged.value.fresh as Fact[]));
  reader.take(others);
}

const reportOfPhone = ({ facts }: SetPhone): string => reportText(reportOf(foldDay('day-1', facts), []));

describe('three phones', () => {
  test('come to one day in every order of exchange, whatever each said before and between', async () => {
    const said = fc.array(
      fc.record({ who: fc.integer({ min: 0, max: 2 }), number: fc.integer({ min: 1, max: 6 }) }),
      { minLength: 1, maxLength: 14 },
    );
    await fc.assert(
      fc.asyncProperty(said, fc.constantFrom(...ORDERS_OF_THREE), async (deeds, [one, two, three]) => {
        const phones = [0, 1, 2].map((which) => new SetPhone(which, which * 90_000));
        const tell = (from: number, to: number): void => {
          for (const [at, { who, number }] of deeds.slice(from, to).entries())
            phones[who]!.say(take('24', 1, number) as Draft, MORNING + (from + at) * 60_000);
        };
        const middle = deeds.length >> 1;
        tell(0, middle);
        await exchange(phones[two]!, phones[one]!);
        tell(middle, deeds.length);
        // To and fro until nobody lacks anything.
        for (const [reader, giver] of [
          [two, one],
          [three, two],
          [one, three],
          [two, one],
        ] as const)
          await exchange(phones[reader]!, phones[giver]!);
        const all = phones.map((phone) => phone.facts.map(({ id }) => id).sort());
        expect(all[1]).toEqual(all[0]);
        expect(all[2]).toEqual(all[0]);
        expect(all[0]).toHaveLength(deeds.length);
        expect(new Set(phones.map(reportOfPhone)).size).toBe(1);
      }),
      { numRuns: 40 },
    );
  });
});

/** Pictures shown a second. */
const A_SECOND = 8;

describe('with every third picture lost, at 8 a second', () => {
  const { day, stored } = loadSampleFile('full');

  test('a day of 75 takes is over whole in less than 15 s', async () => {
    expect(stored.filter(({ kind }) => kind === 'take-logged').length).toBeGreaterThanOrEqual(75);
    const { facts, sender, pictures } = await overCodes(lackedBy(nothingHeld('phoneb'), stored));
    expect(facts).toEqual(stored);
    expect(sender).toBe('Mira Holm');
    expect(pictures / A_SECOND).toBeLessThan(15);
  });

  test('20 actions are over in two codes and less than 3 s', async () => {
    const batches = new Map<string, Envelope[]>();
    for (const fact of stored) {
      const own = batches.get(fact.batch ?? fact.id);
      if (own) own.push(fact);
      else batches.set(fact.batch ?? fact.id, [fact]);
    }
    const last = [...batches.values()].slice(-20).flat();
    const before = stored.filter((fact) => !last.includes(fact));
    const lacked = lackedBy(readHave(writeHave(haveOf(day, 'phoneb', before)))!, stored);
    expect(lacked).toEqual(last);
    const { facts, pictures, count } = await overCodes(lacked);
    expect(facts).toEqual(last);
    expect(count).toBeLessThanOrEqual(2);
    expect(pictures / A_SECOND).toBeLessThan(3);
  });
});

describe('what is no parcel is refused', () => {
  test.each([
    ['nothing', ''],
    ['no JSON', '{'],
    ['no head', '{"day":"day-1"}'],
    [
      'a fact of another day',
      '[1,"day-1","Day",""]\n{"id":"000001-phonea00000","day":"day-2","v":1,"at":1,"zone":0,"kind":"x"}',
    ],
    ['a line that is no fact', '[1,"day-1","Day",""]\n7'],
  ])('%s', async (_, text) => {
    const read = await unpackParcel(nodePacking, await nodePacking.pack(text));
    expect(read).toEqual({ ok: false, problem: { code: 'codes-damaged' } });
  });

  test('bytes that were never packed, and the form of a newer version', async () => {
    expect(await unpackParcel(nodePacking, Uint8Array.of(255, 255, 1))).toMatchObject({
      problem: { code: 'codes-damaged' },
    });
    const newer = await nodePacking.pack('[2,"day-1","Day","",7]');
    expect(await unpackParcel(nodePacking, newer)).toMatchObject({ problem: { code: 'codes-newer' } });
  });
});
