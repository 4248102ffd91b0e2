import { describe, expect, test } from 'vitest';
import { loadSample } from '../../sample-days/load.ts';
import { addVoice, describeDay, describePart, describeVoice } from '../../src/commands/describe.ts';
import { pinVoice, weighMoves } from '../../src/commands/plan-ahead.ts';
import { carryOver, headAfter } from '../../src/commands/start-day.ts';
import { answersNow } from '../../src/day/answers.ts';
import { fileNameOf } from '../../src/day/file-name.ts';
import { foldDay } from '../../src/day/fold.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';

describe('the head of the day', () => {
  test.each([
    [{ date: '2026-13-40' }, 'date-unknown'],
    [{ filePattern: '' }, 'pattern-empty'],
    [{ filePattern: '{slate}' }, 'pattern-names-all-alike'],
    [{ filePattern: '{slate' }, 'pattern-brace-open'],
    [{ filePattern: '{mood}{take}' }, 'pattern-token-unknown'],
    [{ filePattern: '{slate}/{take}' }, 'pattern-character-unsafe'],
  ])('refuses %o with %s', (fields, code) => {
    expect(describeDay(fields)).toMatchObject({ ok: false, problem: { code } });
  });

  test('names files by the pattern that is set', () => {
    const phone = speaker();
    const said = describeDay({ filePattern: '{slate}-{take:3}' });
    phone.say(...(said.ok ? said.value : []));
    const id = phone.id(take('24', 2, 7));
    expect(fileNameOf(phone.day(), id)).toBe('24B-007.wav');
  });
});

describe('a voice', () => {
  test('is corrected once and everywhere, in takes long logged too', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say(take('24', 1, 1));
    const said = describeVoice(phone.day(), 'ines', { part: 'Inès' });
    phone.say(...(said.ok ? said.value : []));
    expect(answersNow(phone.day()).tracks[2]!.name).toBe('Inès');
  });

  test('needs a name', () => {
    const { day } = speaker();
    expect(addVoice({ part: '  ' }, 'new')).toMatchObject({ problem: { code: 'name-empty' } });
    expect(describeVoice(day(), 'nobody', { part: 'X' })).toMatchObject({
      problem: { code: 'not-on-this-day' },
    });
    expect(describePart(day(), 'nothing', { name: 'X' })).toMatchObject({
      problem: { code: 'not-on-this-day' },
    });
  });
});

describe('pins and costs', () => {
  test('change one pin and leave the others, and a last one taken off leaves none', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const say = (pins: Parameters<typeof pinVoice>[2]): void => {
      const said = pinVoice(phone.day(), 'ines', pins);
      phone.say(...(said.ok ? said.value : []));
    };
    const pins = (): unknown => phone.day().tail.get('pins:ines')?.value;
    say({ transmitter: 'A1' });
    say({ alone: true });
    expect(pins()).toEqual({ transmitter: 'A1', alone: true });
    say({ transmitter: undefined });
    expect(pins()).toEqual({ alone: true });
    say({ alone: false });
    expect(pins()).toBeNull();
  });

  test.each([0, 100, 1.5, Number.NaN])('refuse a cost of %d', (retune) => {
    expect(weighMoves({ retune })).toMatchObject({ problem: { code: 'weight-unusable', move: 'retune' } });
  });
});

describe('tomorrow from today', () => {
  test('has the head of today, crew and rates and all, but for date, remarks and the sample mark', () => {
    const { header } = loadSample('full');
    const head = headAfter({ ...header, mixer: 'N. Aske', timecodeRate: '29.97DF', remarks: 'Sea wind' });
    expect(head).toMatchObject({ mixer: 'N. Aske', timecodeRate: '29.97DF', label: 'Night 15' });
    for (const field of ['date', 'remarks', 'sample']) expect(head).not.toHaveProperty(field);
  });

  test('has the rig as it stands, the cast and the crew; packs are off and the sample mark is gone', () => {
    const today = loadSample('full');
    const said = carryOver(today);
    const drafts: readonly Draft[] = said.ok ? said.value : [];
    const nextId = idSource('phonez00000').next;
    const tomorrow = foldDay('day-2', stampFacts(drafts, { day: 'day-2', at: 0, zone: 0, nextId }));
    expect([...tomorrow.rig.byId.keys()].sort()).toEqual([...today.rig.byId.keys()].sort());
    expect([...tomorrow.voices.values()].map(({ part }) => part)).toEqual(
      [...today.voices.values()].filter(({ struck }) => !struck).map(({ part }) => part),
    );
    expect(tomorrow.header).toMatchObject({
      production: 'Nine Below Arnholt',
      label: 'Night 15',
      date: '',
      sample: false,
    });
    expect(answersNow(tomorrow).voices.some(({ paths }) => paths.some((path) => path.transmitter))).toBe(
      false,
    );
    const routes = (day: typeof today) =>
      answersNow(day).inputs.map(({ input, reach }) => [input.id, reach.tracks]);
    expect(routes(tomorrow)).toEqual(routes(today));
  });
});
