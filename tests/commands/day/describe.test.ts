import { describe, expect, test } from 'vitest';
import { addVoice, describeDay, describePart, describeVoice } from '../../../src/commands/day/describe.ts';
import { pinVoice, weighMoves } from '../../../src/commands/line/plan-ahead.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { fileNamesOf } from '../../../src/day/files/file-name.ts';
import { speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

describe('the day details', () => {
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
    expect(fileNamesOf(phone.day()).get(id)).toBe('24B-007.wav');
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
