import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../src/facts/fact.ts';
import { changesCsv, reportCsv } from '../../../src/report/formats/csv.ts';
import { reportHtml } from '../../../src/report/formats/html.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { changeText } from '../../../src/report/revision/change.ts';
import { reportChanges } from '../../../src/report/revision/report-changes.ts';
import { nextLetter, revisionOf } from '../../../src/report/revision/revision.ts';
import { stayingInOrder } from '../../../src/report/revision/take-changes.ts';
import { take } from '../../day/say.ts';
import { anyDay } from '../any-day.ts';
import { smallDay } from '../report-day.ts';

/** What is said to have changed when these things are said after the report went out. */
function changesAfter(...drafts: ((day: ReturnType<typeof smallDay>) => Draft)[]): string[] {
  const day = smallDay();
  const sent = reportOf(day.phone.day());
  for (const draft of drafts) day.phone.say(draft(day));
  return reportChanges(sent, reportOf(day.phone.day())).map(changeText);
}

describe('a revision', () => {
  test('of a day in which nothing changed says so', () => {
    expect(changesAfter()).toEqual([]);
    const model = reportOf(smallDay().phone.day());
    expect(reportText(model, { revision: revisionOf(model, { letter: 'A', model }) })).toContain(
      'CHANGED SINCE REVISION A\n- Nothing that is printed here.\n',
    );
  });

  test('tells a changed field of a take: what it was, what it is', () => {
    expect(
      changesAfter(
        ({ first }) => ({ kind: 'take-described', take: first, fields: { circled: true } }),
        ({ first }) => ({
          kind: 'take-described',
          take: first,
          fields: { length: { frames: 500, rate: '25' } },
        }),
      ),
    ).toEqual([
      '24A/1: length was 0:10 (250 frames), is 0:20 (500 frames).',
      '24A/1: status was empty, is circled.',
    ]);
  });

  test('tells the head, the layout and one line for a run of takes after a late correction', () => {
    expect(
      changesAfter(
        () => ({ kind: 'day-described', fields: { mixer: 'N. Aske-Lund', utility: 'P. Quill' } }),
        ({ second }) => ({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas', before: second }),
      ),
    ).toEqual([
      'Mixer: was N. Aske, is N. Aske-Lund.',
      'Utility added: P. Quill.',
      // She was said to rest after that take only.
      'Not settled: Ines gave up a pack and was on no track: 24A/2.',
      'Track 3: was from 24B/1 FS: Tomas, is from 24A/2: Tomas.',
      '24A/2: track 3 was Ines, is Tomas.',
    ]);
  });

  test('tells a spelling that was corrected once for all takes together', () => {
    expect(
      changesAfter(() => ({ kind: 'voice-described', voice: 'boom', fields: { part: 'Boom Iva' } })),
    ).toEqual([
      'Track 2: was Boom, is Boom Iva.',
      '24A/1, 24A/2, 24B/1 FS, 24B/1, WT1: track 2 was Boom, is Boom Iva.',
    ]);
  });

  test('tells takes that are gone, added and moved', () => {
    expect(changesAfter(({ third }) => ({ kind: 'fact-retracted', targets: [third], by: 'hand' }))).toContain(
      '24B/1 FS gone: was 24BT1FS.wav 01:00:00:00 0:10 false start.',
    );
    expect(changesAfter(() => take('25', 0, 1))).toContain('25/1 added: 25T1.wav 01:00:00:00 0:10.');
    expect(changesAfter(({ first, wild }) => ({ kind: 'fact-moved', target: wild, to: first }))).toContain(
      'WT1: place was after 24C/1 MOS, is first.',
    );
  });

  test('stands at the head of text and HTML', () => {
    const { phone, first } = smallDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
    const model = reportOf(phone.day());
    const revision = revisionOf(model, { letter: 'H', model: sent });
    const line = '24A/1: status was empty, is circled.';
    expect(reportText(model, { revision })).toMatch(
      /^SOUND REPORT, REVISION J\n[\s\S]*CHANGED SINCE REVISION H\n- 24A\/1: /,
    );
    expect(reportHtml(model, { revision })).toContain(line);
  });

  test('leaves the table as it is, with what changed in a table of its own', () => {
    const { phone, first } = smallDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
    const model = reportOf(phone.day());
    const revision = revisionOf(model, { letter: 'H', model: sent });
    expect(reportCsv(model, { revision })).toBe(reportCsv(model));
    const [before, after] = [sent, model].map((one): string[][] => parse(reportCsv(one, { revision })));
    expect(after![0]).toEqual(before![0]);
    expect(after).toHaveLength(before!.length);
    expect(parse(changesCsv(revision), { record_delimiter: '\r\n' })).toEqual([
      ['Revision', 'Since', 'Change'],
      ['J', 'H', '24A/1: status was empty, is circled.'],
    ]);
  });

  // The alphabet of slates: without I and O (common practice, no source).
  test.each([
    ['A', 'B'],
    ['H', 'J'],
    ['N', 'P'],
    ['Z', 'AA'],
  ])('after %s is %s', (letter, next) => {
    expect(nextLetter(letter)).toBe(next);
  });

  test('of any day against itself has no changes, and of two days names every take that differs (seed 41)', () => {
    fc.assert(
      fc.property(anyDay, anyDay, (one, two) => {
        const [was, is] = [reportOf(one), reportOf(two)];
        expect(reportChanges(was, was)).toEqual([]);
        const touched = new Set(reportChanges(was, is).flatMap(({ takes }) => takes));
        const old = new Map(was.takes.map((line) => [line.takeId, JSON.stringify(line)]));
        for (const line of is.takes) {
          if (old.get(line.takeId) !== JSON.stringify(line)) expect(touched).toContain(line.takeId);
        }
      }),
      { seed: 41, numRuns: 60 },
    );
  }, 30_000);
});

describe('what stays in order', () => {
  test.each([
    [[], []],
    [
      [0, 1, 2],
      [0, 1, 2],
    ],
    [
      [0, 2, 3, 1],
      [0, 1, 2],
    ],
    [
      [3, 0, 1, 2],
      [1, 2, 3],
    ],
  ])('of %j are the places %j', (ranks, places) => {
    expect([...stayingInOrder(ranks)].sort()).toEqual(places);
  });
});
