import { describe, expect, test } from 'vitest';
import { seasonBefore } from '../../src/app/season.ts';
import { readCallSheet } from '../../src/callsheet/call-sheet.ts';
import { planCast, recastIn, withPerformersKept } from '../../src/commands/cast/plan-cast.ts';
import { withSeason } from '../../src/commands/cast/season-cast.ts';
import { addCallSheet } from '../../src/commands/scenes/add-call-sheet.ts';
import { knownBefore } from '../../src/day/season/season.ts';
import type { Draft } from '../../src/facts/fact.ts';
import type { MicSaid } from '../../src/facts/kinds/mic-mounted.ts';
import { phone } from './one-phone.ts';

// All names are invented.

const head = (date: string, production = 'Harbour Lights', sample = false): Draft => ({
  kind: 'day-described',
  fields: { production, label: 'Day', date, sample },
});
const performer = (number: string, part: string, person: string): Draft => ({
  kind: 'voice-described',
  voice: `${part} ${person}`.replaceAll(' ', '-'),
  fields: { kind: 'performer', number, part, person },
});
const pack = (name: string): Draft => ({
  kind: 'rig-laid',
  parts: [{ part: name, fields: { type: 'transmitter', name, wear: 'pack' } }],
});
const mic = (voice: string, transmitter: string, said: MicSaid, carried = false): Draft => ({
  kind: 'mic-mounted',
  voice,
  transmitter,
  mic: said,
  ...(carried && { carried }),
});

/** A phone with three days of a production, and a fourth that is fresh. */
async function threeDays() {
  const { app, journal } = phone();
  const start = async (...drafts: Draft[]): Promise<string> => {
    const started = await app.start(() => ({ ok: true, value: drafts }));
    if (!started.ok) throw new Error('not started');
    await (await app.open(started.value)).flushed();
    return started.value;
  };
  const monday = await start(
    head('2026-03-09'),
    pack('A1'),
    performer('1', 'Ines', 'Anna Berg'),
    performer('5', 'Guard', 'Odd Moe'),
    mic('Guard-Odd-Moe', 'A1', { model: 'omni lavalier', place: 'collar', rubs: 'zip' }),
  );
  const tuesday = await start(
    head('2026-03-10', 'harbour  lights '),
    pack('B2'),
    performer('1', 'Ines', 'Anna Berg'),
    performer('2', 'Tomas', 'Jon Holm'),
    mic('Ines-Anna-Berg', 'B2', { model: 'headset', place: 'hair' }),
  );
  const wednesday = await start(
    head('2026-03-12'),
    pack('A1'),
    performer('1', 'Ines', 'Mia Lund'),
    mic('Ines-Mia-Lund', 'A1', { model: 'headset', place: 'hair' }, true),
    performer('5', 'Guard', 'Odd Moe'),
    mic('Guard-Odd-Moe', 'A1', { model: 'omni lavalier', colour: 'black', place: 'chest' }),
  );
  const friday = await start(head('2026-03-13'));
  const day = async (id = friday) => (await app.open(id)).day.value;
  const season = async (id = friday) => seasonBefore(journal, await day(id));
  return { app, start, day, season, days: { monday, tuesday, wednesday, friday } };
}

const names = (season: Awaited<ReturnType<typeof seasonBefore>>) =>
  season.map(({ number, part, person, date }) => `${number} ${part}, ${person}, ${date}`).sort();

describe('a season', () => {
  test('is known to the next day by cast number, each thing as it was last', async () => {
    const { season } = await threeDays();
    const known = await season();
    expect(names(known)).toEqual([
      '1 Ines, Mia Lund, 2026-03-12',
      '2 Tomas, Jon Holm, 2026-03-10',
      '5 Guard, Odd Moe, 2026-03-12',
    ]);
    expect(knownBefore(known, { number: '5', part: '', person: '' })).toMatchObject({
      mics: [{ pack: 'A1', mic: { model: 'omni lavalier', colour: 'black', place: 'chest', rubs: '' } }],
      micsDate: '2026-03-12',
    });
    // What nobody confirmed is of the day when it was said.
    expect(knownBefore(known, { number: '1', part: 'ines', person: '' })).toMatchObject({
      mics: [{ mic: { place: 'hair' } }],
      micsDate: '2026-03-10',
    });
  });

  test('knows on each day only what was before it', async () => {
    const { season, days } = await threeDays();
    expect(names(await season(days.tuesday))).toEqual([
      '1 Ines, Anna Berg, 2026-03-09',
      '5 Guard, Odd Moe, 2026-03-09',
    ]);
    expect(await season(days.monday)).toEqual([]);
  });

  test('never mixes with another production, with practice, or with days of no production', async () => {
    const { season, start } = await threeDays();
    const other = await start(head('2026-03-14', 'Salt Road'));
    const practice = await start(head('2026-03-14', 'Harbour Lights', true));
    const nameless = await start(head('2026-03-11', ''), performer('5', 'Nobody', 'No One'));
    const later = await start(head('2026-03-15', ''));
    for (const id of [other, practice, nameless, later]) expect(await season(id)).toEqual([]);
    await start(head('2026-03-10', 'Salt Road'), performer('5', 'Clerk', 'Bo Ek'));
    expect(names(await season())).not.toContainEqual(expect.stringContaining('Clerk'));
    expect(names(await season(other))).toEqual(['5 Clerk, Bo Ek, 2026-03-10']);
  });

  test('forgets a day that is erased, and follows one that is changed', async () => {
    const { app, season, days } = await threeDays();
    await season();
    await app.erase(days.wednesday);
    expect(names(await season())).toContain('1 Ines, Anna Berg, 2026-03-10');
    const store = await app.open(days.tuesday);
    store.run(() => ({
      ok: true,
      value: [performer('2', 'Tomas', 'Jon Holm'), performer('7', 'Nurse', 'Lea Holm')],
    }));
    await store.flushed();
    expect(names(await season())).toContain('7 Nurse, Lea Holm, 2026-03-10');
  });
});

const STRIP = '46 INT. KITCHEN - DAY 2 3/8 1, 2, 5';

async function sheetOf(text: string) {
  const { season, day } = await threeDays();
  const today = await day();
  return { day: today, sheet: withSeason(readCallSheet(text), today, await season()) };
}
const rows = ({ sheet }: Awaited<ReturnType<typeof sheetOf>>) =>
  sheet.cast.map(({ number, part, person, onSet }) =>
    [number, part, person, onSet].filter(Boolean).join(' '),
  );

describe('a call sheet on the next day', () => {
  test('that says only numbers gives parts and performers, marked as carried', async () => {
    const said = await sheetOf(STRIP);
    expect(rows(said)).toEqual(['1 Ines Mia Lund', '2 Tomas Jon Holm', '5 Guard Odd Moe']);
    expect(said.sheet.cast[0]).toMatchObject({
      how: { part: 'carried', person: 'carried' },
      known: { date: '2026-03-12' },
    });
    const ids = ['n1', 'n2', 'n3', 'n4'];
    const added = addCallSheet(
      said.day,
      { cast: said.sheet.cast, scenes: said.sheet.scenes },
      () => ids.shift()!,
    );
    expect(added.ok && added.value.map(({ kind }) => kind)).toEqual([
      'voice-described',
      'voice-described',
      'voice-described',
      'scenes-described',
    ]);
    expect(added.ok && added.value.at(-1)).toMatchObject({
      scenes: [{ fields: { voices: ['n1', 'n2', 'n3'], others: [] } }],
    });
  });

  test.each([
    ['numbers alone', '1, 2, 5', ['1 Ines Mia Lund', '2 Tomas Jon Holm', '5 Guard Odd Moe'], []],
    ['a number with its times', 'CAST\n5 SWF 0630 0715', ['5 Guard Odd Moe 0715'], []],
    ['a number that nobody had', '1, 2, 9', [], ['1, 2, 9']],
    ['the number of a page', '5', [], ['5']],
    ['figures that are no cast', '1 2/8', [], ['1 2/8']],
    ['a part without its performer', '1. INES\n5. GUARD', ['1 Ines Mia Lund', '5 Guard Odd Moe'], []],
    ['a performer without the part', '5. Odd Moe', ['5 Guard Odd Moe'], []],
    ['another part under the number', '5. CLERK - Bo Ek', ['5 Clerk Bo Ek'], []],
  ])('reads %s', async (_what, text, cast, unread) => {
    const said = await sheetOf(text);
    expect(rows(said)).toEqual(cast);
    expect(said.sheet.unread.map((line) => line.text)).toEqual(unread);
  });

  test('asks about a part that another performer plays today, and keeps whom it is told to', async () => {
    const { day, sheet } = await sheetOf('1. INES - Anna Berg\n5. GUARD - odd moe');
    const asked = recastIn(planCast(day, sheet.cast));
    expect(asked.map(({ entry, known }) => [entry.person, known.person, known.date])).toEqual([
      ['Anna Berg', 'Mia Lund', '2026-03-12'],
    ]);
    const kept = withPerformersKept(sheet.cast, new Set([asked[0]!.entry.line]));
    expect(kept.map(({ person }) => person)).toEqual(['Mia Lund', 'odd moe']);
  });

  test('puts who is on no line last, by number', async () => {
    const said = await sheetOf(`${STRIP.replace('1, 2, 5', '5, 1, 2')}\n\nCAST\n2. TOMAS\n9. CLERK - Bo Ek`);
    expect(rows(said)).toEqual(['2 Tomas Jon Holm', '9 Clerk Bo Ek', '1 Ines Mia Lund', '5 Guard Odd Moe']);
  });

  test('leaves out a row that was carried where somebody said so', async () => {
    const { day, sheet } = await sheetOf(STRIP);
    const left = sheet.cast[1]!.line;
    const { season } = await threeDays();
    const again = withSeason(readCallSheet(STRIP), day, await season(), (line) => line !== left);
    expect(again.cast.map(({ number }) => number)).toEqual(['1', '5']);
  });
});

test('somebody of the cast of the day is as the day says', async () => {
  const { start, day, season } = await threeDays();
  const id = await start(head('2026-03-14'), performer('5', 'Watchman', 'Bo Ek'));
  const today = await day(id);
  const sheet = withSeason(readCallSheet(STRIP), today, await season(id));
  expect(sheet.cast.map(({ number }) => number)).toEqual(['1', '2']);
});
