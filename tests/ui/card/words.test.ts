import { describe, expect, test } from 'vitest';
import { causesOf } from '../../../src/reconcile/causes/causes.ts';
import { causeWords } from '../../../src/ui/card/cause-words.ts';
import { differenceWords } from '../../../src/ui/card/difference-words.ts';
import { settlementWords } from '../../../src/ui/card/settlement-words.ts';
import { sideWords } from '../../../src/ui/card/side-words.ts';
import { speaker, take } from '../../day/say.ts';
import { cardOf } from '../../reconcile/build-card.ts';
import { checkFiles } from '../../reconcile/check-card.ts';

describe('log and card side by side', () => {
  test('of takes before the first roll was named say no roll, as the report does', async () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const [found] = await checkFiles(phone.day(), [{ ...file!, tape: '7A' }]);
    expect(found!.code).toBe('roll-differs');
    expect(sideWords(found!)).toEqual({ log: 'no roll', card: '7A' });
  });

  test('are settled in words that say what one tap does to the files', () => {
    const phone = speaker();
    const mono = { kind: 'describe-day', fields: { filePattern: '{slate}T{take}_tr{track}' } } as const;
    expect(settlementWords(phone.day(), mono)).toBe('Use the card’s file names');
    const named = { kind: 'describe-takes', takes: [{ take: 'x', fields: { file: 'X.wav' } }] } as const;
    expect(settlementWords(phone.day(), named)).toBe('It is X.wav');
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    expect(settlementWords(phone.day(), named)).toBe('It is X');
  });

  test('of anything else that is not there say nothing', () => {
    const none = { code: 'file-name-differs', was: '', is: 'A.wav' } as never;
    expect(sideWords(none)).toEqual({ log: 'nothing', card: 'A.wav' });
  });
});

describe('on the screen', () => {
  test('no code name is read', async () => {
    const phone = speaker();
    phone.say(take('24', 1, 1, { start: { frames: 900_000, rate: '25' } }));
    const [file] = cardOf(phone.day());
    const odd = {
      ...file!,
      types: ['NO_GOOD'],
      more: '<PRE_RECORD_SAMPLECOUNT>-1</PRE_RECORD_SAMPLECOUNT>',
      sampleRate: 96_000,
      start: file!.start! * 2,
      length: file!.length * 2,
    };
    const found = await checkFiles(phone.day(), [odd]);
    const words = found.flatMap((one) => [
      differenceWords(phone.day(), one),
      ...Object.values(sideWords(one) ?? {}),
      ...one.settlements.map((way) => settlementWords(phone.day(), way)),
    ]);
    expect(found.map(({ code }) => code)).toContain('file-warning');
    for (const text of words) expect(text).not.toMatch(/[a-z]-[a-z]+-[a-z]|_|[a-z](?!Hz)[A-Z]/);
    expect(words).toContain('96 kHz');
    expect(words).toContain('NG');
  });

  test('frames are hours, minutes, seconds and frames', async () => {
    const phone = speaker();
    for (let at = 0; at < 3; at += 1)
      phone.say(take('24', 1, at + 1, { start: { frames: 900_000 + at * 15_000, rate: '25' } }));
    const files = cardOf(phone.day());
    const late = files.with(1, { ...files[1]!, start: files[1]!.start! + 48_000 * 125 + 1920 * 3 });
    const [found] = await checkFiles(phone.day(), late);
    expect(differenceWords(phone.day(), found!)).toBe('The recorder started 00:02:05:03 later');
  });

  test('several differences of one cause are one sentence', async () => {
    const phone = speaker();
    for (let at = 0; at < 4; at += 1)
      phone.say(
        take('24', 1, at + 1, { circled: true, start: { frames: 900_000 + at * 15_000, rate: '25' } }),
      );
    const files = cardOf(phone.day()).map((file) => ({ ...file, circled: false }));
    const [cause, ...others] = causesOf(await checkFiles(phone.day(), files));
    expect(others).toEqual([]);
    expect(causeWords(phone.day(), cause!)).toBe('4 takes circled in the log only');
  });
});
