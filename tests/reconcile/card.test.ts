import { describe, expect, test } from 'vitest';
import { settleCard } from '../../src/commands/line/settle-card.ts';
import { readFact } from '../../src/facts/fact.ts';
import { SEVERITIES } from '../../src/reconcile/differences/difference.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { recordingName } from '../../src/reconcile/log-and-card/recorded.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { byFile, checkFiles, detailOf, openOn, settle, told } from './check-card.ts';
import { filmDay } from './film-day.ts';

const SECOND = 48_000;

function plainDay(takes = 8) {
  const filmed = filmDay({ takes, seed: 11 });
  return { ...filmed, files: cardOf(filmed.day()) };
}

describe('settings of the card', () => {
  const OTHER: readonly (readonly [string, Partial<CardFile>, string | number, string | number])[] = [
    ['sample-rate-differs', { sampleRate: 96_000 }, 48_000, 96_000],
    ['bit-depth-differs', { bits: 16 }, '24', '16'],
    ['timecode-rate-differs', { rate: '24/1' }, '25', '24'],
  ];

  test.each(OTHER)(
    '%s: is one difference where all files agree, settled for the day',
    async (code, change, was, is) => {
      const { phone, day, files } = plainDay();
      // At another sample rate the same times are other counts.
      const scale = (change.sampleRate ?? SECOND) / SECOND;
      const changed = files.map((file) => ({
        ...file,
        ...change,
        start: file.start! * scale,
        length: file.length * scale,
      }));
      const recordings = await recordCard(changed);
      const open = openOn(day(), recordings);
      expect(open.map((one) => [one.code, one.was, one.is])).toEqual([[code, was, is]]);
      settle(phone, byFile(open[0]!));
      expect(openOn(day(), recordings).filter((one) => one.code === code)).toEqual([]);
    },
  );

  test('that only some files have are told of each of them', async () => {
    const { day, files } = plainDay();
    const found = await checkFiles(
      day(),
      files.map((file, at) => (at % 3 === 0 ? { ...file, bits: 16 } : file)),
    );
    expect(new Set(found.map(({ code }) => code))).toEqual(new Set(['bit-depth-differs']));
    expect(found).toHaveLength(3);
  });

  test('a recorder that names its files otherwise is one difference, settled for all takes', async () => {
    const { phone, day, files } = plainDay();
    const recordings = await recordCard(files.map((file, at) => ({ ...file, name: `SR-00${at}.WAV` })));
    const open = openOn(day(), recordings);
    expect(open.map((one) => [one.code, detailOf(one).count])).toEqual([['file-names-differ', files.length]]);
    settle(phone, byFile(open[0]!));
    expect(openOn(day(), recordings)).toEqual([]);
  });
});

describe('what the card shows by itself', () => {
  test('recordings over one another', async () => {
    const { day, files } = plainDay();
    const found = await checkFiles(day(), [
      ...files,
      { ...files[2]!, name: 'OVER.wav', scene: '99', start: files[2]!.start! + SECOND, length: 10 * SECOND },
    ]);
    expect(found.map(({ code }) => code).sort()).toEqual(['recording-not-logged', 'recordings-overlap']);
  });

  test('recordings of another day are one difference, those of the night are not', async () => {
    const { day, files } = plainDay();
    const old = files.map((file, at) => ({
      ...file,
      name: `OLD${at}.wav`,
      scene: '99',
      tape: '6Z',
      date: '2026-10-06',
      start: file.start! + 5 * 3600 * SECOND,
    }));
    const [found, ...others] = await checkFiles(day(), [...files, ...old]);
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      code: 'recordings-of-another-day',
      was: '2026-10-07',
      is: ['2026-10-06'],
      detail: { count: old.length },
    });
    const night = { ...old[0]!, date: '2026-10-08' };
    expect((await checkFiles(day(), [...files, night])).map(({ code }) => code)).toEqual([
      'recording-not-logged',
    ]);
  });

  test('a take that goes on after a gap', async () => {
    const { day, files } = plainDay();
    const { start, length } = files[2]!;
    const half = Math.floor(length / 2);
    const parts = [
      { ...files[2]!, length: half },
      { ...files[2]!, name: 'REST.wav', start: start! + half + SECOND, length: half },
    ];
    const found = await checkFiles(day(), files.toSpliced(2, 1, ...parts));
    expect(found.find(({ code }) => code === 'recordings-gap')).toMatchObject({ detail: { ms: 1000 } });
  });

  test('a split recording whose parts meet is one recording with one name', async () => {
    const { day, files } = plainDay();
    const { start, length, name } = files[2]!;
    const half = Math.floor(length / 2);
    const stem = name.replace('.wav', '');
    const recordings = await recordCard(
      files.toSpliced(
        2,
        1,
        { ...files[2]!, name: `${stem}_001.wav`, length: half },
        { ...files[2]!, name: `${stem}_002.wav`, start: start! + half, length: length - half },
      ),
    );
    expect(recordings.map(recordingName)).toContain(name);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('mono files of a set match as one, and a set with a file missing is lost sound', async () => {
    const { phone, day, files } = plainDay(3);
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    const monos = files.flatMap((file, at) =>
      file.tracks.map((track, index) => ({
        ...file,
        name: file.name.replace('.wav', `_${track.channel}.wav`),
        tracks: [track],
        fileSet: { family: `F${at}`, index: index + 1, total: file.tracks.length },
      })),
    );
    expect(await checkFiles(day(), monos)).toEqual([]);
    const broken = await checkFiles(day(), monos.slice(0, -1));
    expect(broken.map(({ code }) => code).sort()).toEqual(['file-set-incomplete', 'track-not-recorded']);
  });

  test('a file that was not closed is lost sound, told with its byte', async () => {
    const { day, files } = plainDay(3);
    const recordings = await recordCard(files);
    const damaged = recordings.map((recording, at) =>
      at !== 1
        ? recording
        : {
            ...recording,
            files: recording.files.map((file) => ({
              ...file,
              warnings: [{ code: 'data-not-closed' as const, at: 604 }],
            })),
          },
    );
    const [found] = openOn(day(), damaged);
    expect(found).toMatchObject({
      code: 'file-damaged',
      severity: 'lost',
      is: 'data-not-closed',
      detail: { warning: { at: 604 }, count: 1 },
    });
  });
});

describe('the list', () => {
  test('follows the day, the worst first within one take, what concerns the whole card at its head', async () => {
    const { day, files } = plainDay();
    const odd = files
      .map((file) => ({ ...file, bits: 16 }))
      .with(4, {
        ...files[4]!,
        bits: 16,
        circled: !files[4]!.circled,
        note: 'Late',
        scene: '90',
        tracks: files[4]!.tracks.slice(0, -1),
      })
      .toSpliced(1, 1);
    const found = await checkFiles(day(), odd);
    expect(found.map(({ code }) => code)).toEqual([
      'bit-depth-differs',
      'take-not-recorded',
      'track-not-recorded',
      'slate-differs',
      'circled-differs',
      'note-not-logged',
    ]);
    const ranks = found.slice(2).map(({ severity }) => SEVERITIES.indexOf(severity));
    expect(ranks).toEqual([...ranks].sort());
  });

  test('of an empty card is every take, and of an empty day every recording', async () => {
    const { day, files } = plainDay();
    const none = await checkFiles(day(), []);
    expect(new Set(none.map(({ code }) => code))).toEqual(new Set(['take-not-recorded']));
    expect(none).toHaveLength(files.length);
    const empty = filmDay({ takes: 0 }).day();
    const all = openOn(empty, await recordCard(files));
    expect(all.filter(({ code }) => code === 'recording-not-logged')).toHaveLength(files.length);
    expect(await checkFiles(empty, [])).toEqual([]);
  });
});

describe('hostile files', () => {
  const NASTY = [
    '../../etc/passwd',
    '__proto__',
    'constructor',
    '=HYPERLINK("x")',
    '<img src=x onerror=alert(1)>',
    '\u202Egpj.exe',
    '24A\u0000B',
    ' ',
    '0'.repeat(5000),
    '𝟚𝟜𝔸'.repeat(300),
    '('.repeat(3000),
    `${'9'.repeat(400)}e999`,
    'ß'.repeat(201),
  ];

  test.each(NASTY.map((text, at) => [at, text] as const))(
    'text %i stays text: the check ends, and what it offers is refused or accepted as facts that read back',
    async (_, text) => {
      const { phone, day, files } = plainDay(6);
      const recordings = await recordCard(files);
      const nasty = recordings.map((recording, at) => ({
        ...recording,
        scene: at % 2 ? text : recording.scene,
        take: at % 3 ? text : recording.take,
        tape: text,
        note: text,
        project: text,
        takeTypes: [text],
        tracks: recording.tracks.map((track) => ({ ...track, name: text })),
        files: recording.files.map((file) => ({ ...file, name: `${text}.wav` })),
      }));
      const found = differencesOf(day(), matchRecordings(day(), nasty));
      for (const { settlements } of found)
        for (const settlement of settlements) {
          const said = settleCard(day(), settlement);
          if (said.ok) phone.say(...said.value);
        }
      for (const fact of phone.facts) expect(readFact(fact)).toMatchObject({ ok: true });
      expect(told(day(), openOn(day(), nasty)).length).toBeLessThan(200);
    },
  );

  test('starts and lengths beyond every day are no NaN anywhere', async () => {
    const { day, files } = plainDay(6);
    const recordings = await recordCard(
      files.map((file, at) => ({ ...file, start: 2 ** 39 + at * 1e9, length: at === 0 ? 0 : file.length })),
    );
    const found = differencesOf(day(), matchRecordings(day(), recordings));
    expect(
      JSON.stringify(
        found.map((one) => [one.was, one.is, detailOf(one)]),
        (_, value) => (typeof value === 'number' && !Number.isFinite(value) ? 'NOT FINITE' : value),
      ),
    ).not.toContain('NOT FINITE');
  });
});
