import { describe, expect, test } from 'vitest';
import { carryOver } from '../../../src/commands/day/start-day.ts';
import { changeHead, setRecorder } from '../../../src/commands/line/set-recorder.ts';
import { answersAtTake } from '../../../src/day/answers/answers.ts';
import { MORNING, speaker, take } from '../../day/say.ts';

const codeOf = (said: ReturnType<typeof setRecorder>) => (said.ok ? 'ok' : said.problem.code);

describe('setting the recorder', () => {
  test('before anything is recorded holds for the whole day', () => {
    const said = setRecorder(speaker().day(), { timecodeRate: '24' });
    expect(said).toEqual({ ok: true, value: [{ kind: 'day-described', fields: { timecodeRate: '24' } }] });
  });

  test('holds from here on, or from just before a take, and says only what changes', () => {
    const phone = speaker();
    const first = phone.id(take('24', 0, 1));
    const settings = { timecodeRate: '24', sampleRate: 48_000 } as const;
    expect(setRecorder(phone.day(), settings)).toEqual({
      ok: true,
      value: [{ kind: 'recorder-set', settings: { timecodeRate: '24' } }],
    });
    expect(setRecorder(phone.day(), settings, { before: first })).toEqual({
      ok: true,
      value: [{ kind: 'recorder-set', settings: { timecodeRate: '24' }, before: first }],
    });
  });

  test('is compared with what held at its place, not with what holds now', () => {
    const phone = speaker();
    const first = phone.id(take('24', 0, 1));
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '24' } });
    expect(codeOf(setRecorder(phone.day(), { timecodeRate: '24' }))).toBe('nothing-changed');
    expect(codeOf(setRecorder(phone.day(), { timecodeRate: '24' }, { before: first }))).toBe('ok');
    expect(codeOf(setRecorder(phone.day(), { timecodeRate: '25' }, { before: first }))).toBe(
      'nothing-changed',
    );
  });

  test.each([
    ['rate-unknown', { timecodeRate: '26' }],
    ['pattern-names-all-alike', { filePattern: '{slate}' }],
    ['pattern-token-unknown', { filePattern: '{take}{boom}' }],
  ] as const)('is refused: %s', (code, settings) => {
    const phone = speaker();
    phone.say(take('24', 0, 1));
    expect(codeOf(setRecorder(phone.day(), settings as never))).toBe(code);
  });

  test('before a take that is not there is refused', () => {
    expect(codeOf(setRecorder(speaker().day(), { timecodeRate: '24' }, { before: 'none' }))).toBe(
      'not-on-this-day',
    );
  });

  test('the next day begins as the recorder was set at the end', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { timecodeRate: '25' } }, take('24', 0, 1));
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '23.976', bitDepth: '32f' } });
    const carried = carryOver(phone.day(), { atMs: MORNING, zone: 0 });
    expect(carried.ok && carried.value[0]).toMatchObject({
      kind: 'day-described',
      fields: { timecodeRate: '23.976', bitDepth: '32f' },
    });
  });
});

describe('changing the head of the day', () => {
  test('is one action: whole-day fields, settings from a place on, and the roll', () => {
    const phone = speaker();
    const first = phone.id(take('24', 0, 1));
    const said = changeHead(phone.day(), {
      fields: { mixer: 'N. Aske', timecodeRate: '24' },
      setBefore: first,
      roll: { name: ' 7A ', before: first },
    });
    expect(said).toEqual({
      ok: true,
      value: [
        { kind: 'day-described', fields: { mixer: 'N. Aske' } },
        { kind: 'recorder-set', settings: { timecodeRate: '24' }, before: first },
        { kind: 'roll-changed', roll: '7A', before: first },
      ],
    });
    if (!said.ok) return;
    phone.say(...said.value);
    expect(answersAtTake(phone.day(), first).roll).toBe('7A');
  });

  test('refuses all of it if a part is refused, and none for what is so already', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1));
    const day = phone.day();
    expect(codeOf(changeHead(day, { fields: { mixer: 'N', filePattern: '' } }))).toBe('pattern-empty');
    expect(codeOf(changeHead(day, { fields: { timecodeRate: '25' } }))).toBe('nothing-changed');
    expect(changeHead(day, { fields: { timecodeRate: '25', mixer: 'N' } })).toEqual({
      ok: true,
      value: [{ kind: 'day-described', fields: { mixer: 'N' } }],
    });
  });
});
