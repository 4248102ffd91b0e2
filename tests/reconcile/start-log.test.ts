import { describe, expect, test } from 'vitest';
import { foldDay } from '../../src/day/fold.ts';
import { readFact } from '../../src/facts/fact.ts';
import { notesFromCard, startLogFromCard } from '../../src/reconcile/start-log.ts';
import { reportOf } from '../../src/report/model.ts';
import type { Recording } from '../../src/wave/recordings.ts';
import { speaker } from '../day/say.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { openOn } from './check-card.ts';
import { filmDay } from './film-day.ts';

function started(recordings: readonly Recording[], style?: 'lettered' | 'numbered') {
  const phone = speaker();
  const log = startLogFromCard(recordings, style);
  if (log.ok) phone.say(...log.value);
  return phone;
}

describe('a log started from a card', () => {
  test.each([1, 2, 3, 4])(
    'says of every take what the log said whose card it is, and differs in nothing (seed %i)',
    async (seed) => {
      const original = filmDay({ takes: 40, seed, fromHour: seed === 4 ? 21 : 9 }).day();
      const files = cardOf(original);
      const recordings = await recordCard(files);
      const phone = started(recordings);
      expect(openOn(phone.day(), recordings).filter(({ code }) => code !== 'note-not-logged')).toEqual([]);
      phone.say(...notesFromCard(phone.day(), recordings));
      expect(openOn(phone.day(), recordings)).toEqual([]);
      const wanted = reportOf(original);
      const got = reportOf(phone.day());
      const shown = ({ takes }: typeof got) =>
        takes
          .filter(({ kind }) => kind !== 'mos')
          .map(({ file, roll, start, length, circled, take, tracks }) => ({
            file,
            roll,
            start,
            length,
            circled,
            take: take.replace(/^RT/, 'RT'),
            tracks: tracks
              .filter(({ state }) => state !== 'mix')
              .map(({ number, name }) => `${number} ${name}`),
          }));
      expect(shown(got)).toEqual(shown(wanted));
      expect(got.head).toMatchObject({
        production: 'Salt Road',
        date: '2026-10-07',
        sampleRate: 48_000,
        bitDepth: '24',
        timecodeRate: '25',
        fileLayout: 'poly',
        rolls: wanted.head.rolls,
      });
      for (const fact of phone.facts) expect(readFact(fact)).toMatchObject({ ok: true });
    },
  );

  test('is one action, so one undo takes it back', async () => {
    const recordings = await recordCard(cardOf(filmDay({ takes: 5 }).day()));
    const phone = started(recordings);
    expect(new Set(phone.facts.map(({ id, batch }) => batch ?? id)).size).toBe(1);
  });

  test('counts what has no scene as wild tracks and fills in numbers that are missing', async () => {
    const [file] = cardOf(filmDay({ takes: 1, seed: 11 }).day());
    const bare = (name: string, start: number): CardFile => {
      const { scene: _scene, take: _take, types: _types, ...rest } = file!;
      return { ...rest, name, start: start * 48_000, length: 480_000 };
    };
    const phone = started(await recordCard([bare('B.wav', 200), bare('A.wav', 100)]));
    expect(reportOf(phone.day()).takes.map(({ text, file: name }) => [text, name])).toEqual([
      ['WT1', 'A.wav'],
      ['WT2', 'B.wav'],
    ]);
  });

  test('reads numbered slates when told so', async () => {
    const files = cardOf(filmDay({ takes: 3, seed: 11 }).day()).map((file, at) => ({
      ...file,
      scene: `${118 + at}`,
    }));
    const phone = started(await recordCard(files), 'numbered');
    expect(reportOf(phone.day()).takes.map(({ slate }) => slate)).toEqual(['118', '119', '120']);
  });

  test('fails on a card with nothing on it', () => {
    expect(startLogFromCard([])).toEqual({ ok: false, problem: { code: 'card-empty' } });
  });

  test('folds whatever the names are', async () => {
    const recordings = await recordCard(cardOf(filmDay({ takes: 4 }).day()));
    const odd = recordings.map((one) => ({
      ...one,
      scene: '\u0000'.repeat(500),
      tape: 'x'.repeat(900),
      take: '99999',
    }));
    const phone = started(odd);
    for (const fact of phone.facts) expect(readFact(fact)).toMatchObject({ ok: true });
    expect(foldDay('day-1', phone.facts).takes.size).toBe(recordings.length);
  });
});
