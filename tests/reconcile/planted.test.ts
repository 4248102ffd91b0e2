import { describe, expect, test } from 'vitest';
import { settleAll } from '../../src/commands/line/settle-card.ts';
import { causesOf } from '../../src/reconcile/causes/causes.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { type CardFile, cardOf, monoCard, recordCard } from './build-card.ts';
import { openOn } from './check-card.ts';
import { type Filmed, filmDay } from './film-day.ts';

const SECOND = 48_000;
const TAKES = 48;

const early = (file: CardFile, seconds: number): CardFile => ({
  ...file,
  start: file.start! - seconds * SECOND,
  length: file.length + seconds * SECOND,
});
const later = (file: CardFile, seconds: number): CardFile => ({
  ...file,
  start: Math.round(file.start! + seconds * SECOND),
});
const renamed = (file: CardFile, from: string, to: string): CardFile => ({
  ...file,
  tracks: file.tracks.map((track) => (track.name === from ? { ...track, name: to } : track)),
});
const swapped = (file: CardFile): CardFile => ({
  ...file,
  tracks: file.tracks.map((track) =>
    track.channel === 3
      ? { ...track, name: file.tracks.find(({ channel }) => channel === 4)?.name ?? track.name }
      : track.channel === 4
        ? { ...track, name: file.tracks.find(({ channel }) => channel === 3)?.name ?? track.name }
        : track,
  ),
});
/** Another unit's day on another recorder: its own slates, rolls and times. */
const strange = (seed: number, more: Partial<CardFile>): CardFile[] =>
  cardOf(filmDay({ takes: 20, seed, fromHour: 10 }).day()).map((file, at) => ({
    ...file,
    name: `U${at}.wav`,
    scene: `9${at % 7}F`,
    tape: 'U1',
    note: '',
    tracks: [],
    ...more,
  }));

interface Planted {
  readonly fault: string;
  readonly card: (files: readonly CardFile[], filmed: Filmed) => readonly CardFile[];
  /** Each cause with how many differences it has. */
  readonly lines: (files: readonly CardFile[]) => readonly string[];
  /** How many of its recordings are told as also there. */
  readonly alsoThere?: (files: readonly CardFile[]) => number;
}

const circled = (files: readonly CardFile[]): number => files.filter((file) => file.circled).length;

const FAULTS: readonly Planted[] = [
  { fault: 'nothing', card: (files) => files, lines: () => [] },
  {
    fault: 'a constant scene',
    card: (files) => files.map((file) => ({ ...file, scene: 'T' })),
    lines: () => ['field-never-changes 1'],
  },
  {
    fault: 'a running counter',
    card: (files) => files.map((file, at) => ({ ...file, take: String(at + 1) })),
    lines: () => ['field-never-changes 1'],
  },
  {
    fault: 'the date as roll',
    card: (files) => files.map((file) => ({ ...file, tape: '20261007' })),
    lines: () => ['field-never-changes 1'],
  },
  {
    fault: 'no timecode',
    card: (files) => files.map((file) => ({ ...file, start: undefined })),
    lines: () => [],
  },
  {
    fault: 'a clock two seconds off',
    card: (files) => files.map((file) => later(file, 1.9)),
    lines: () => [],
  },
  {
    fault: 'a clock three hours off',
    card: (files) => files.map((file) => later(file, 3 * 3600)),
    lines: () => ['clock-apart 1'],
  },
  {
    fault: 'a clock that drifts',
    card: (files) => files.map((file) => later(file, ((file.start! - files[0]!.start!) / SECOND) * 25e-6)),
    lines: () => ['clock-drifts 1'],
  },
  {
    fault: 'two files missing',
    card: (files) => files.filter((_, at) => at !== 7 && at !== 30),
    lines: () => ['take-not-recorded 2'],
  },
  {
    fault: 'two files nobody logged',
    card: (files) => [
      ...files,
      ...[5, 20].map((at) => ({
        ...later(files[at]!, files[at]!.length / SECOND + 5),
        name: `X${at}.wav`,
        scene: '88',
        take: '1',
        types: [],
        note: '',
        length: 12 * SECOND,
      })),
    ],
    lines: () => ['recording-not-logged 2'],
  },
  {
    fault: 'files with names of their own',
    card: (files) => files.map((file, at) => ({ ...file, name: `R${at}.WAV` })),
    lines: () => ['file-names-differ 1'],
  },
  {
    fault: 'a suffix after every name',
    card: (files) => files.map((file) => ({ ...file, name: file.name.replace('.wav', '_1.wav') })),
    lines: () => ['file-names-differ 1'],
  },
  {
    fault: 'swapped tracks in a run',
    card: (files) => files.map((file, at) => (at >= 3 && at <= 4 ? swapped(file) : file)),
    lines: () => ['tracks-swapped 1'],
  },
  {
    fault: 'one person under another name all day',
    card: (files) => files.map((file) => renamed(file, 'Ines', 'Wind')),
    // Three runs, as she comes and goes.
    lines: () => ['track-name-differs 3'],
  },
  {
    fault: 'accents lost and capitals',
    card: (files) => files.map((file) => renamed(renamed(file, 'Ines', 'INÈS'), 'Tomas', 'tomás')),
    lines: () => [],
  },
  {
    fault: 'circled only in the log',
    card: (files) => files.map((file) => ({ ...file, circled: false })),
    lines: (files) => [`circled-differs ${circled(files)}`],
  },
  {
    fault: 'a pre-record with its field',
    card: (files) =>
      files.map((file) => ({
        ...early(file, 10),
        more: `<PRE_RECORD_SAMPLECOUNT>${10 * SECOND}</PRE_RECORD_SAMPLECOUNT>`,
      })),
    lines: () => [],
  },
  {
    fault: 'a pre-record without its field',
    card: (files) => files.map((file) => early(file, 10)),
    lines: () => ['pre-record-undeclared 1'],
  },
  {
    fault: 'a wrong rate',
    card: (files) => files.map((file) => ({ ...file, rate: '24/1' })),
    lines: () => ['timecode-rate-differs 1'],
  },
  {
    fault: 'a wrong rate in half of the files',
    card: (files) => files.map((file, at) => (at % 2 ? { ...file, bits: 16 } : file)),
    lines: (files) => [`bit-depth-differs ${files.filter((_, at) => at % 2).length}`],
  },
  {
    fault: 'a signed field in every file',
    card: (files) =>
      files.map((file) => ({ ...file, more: '<PRE_RECORD_SAMPLECOUNT>-1</PRE_RECORD_SAMPLECOUNT>' })),
    lines: (files) => [`file-warning ${files.length}`],
  },
  {
    fault: 'a signed field in every file of mono sets',
    card: (files, { phone }) => {
      phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
      const more = '<PRE_RECORD_SAMPLECOUNT>-1</PRE_RECORD_SAMPLECOUNT>';
      return monoCard(files).map((file) => ({ ...file, more }));
    },
    // One for each recording, however many files it is.
    lines: (files) => [`file-warning ${files.length}`],
  },
  {
    fault: 'a recording split over 4 GiB',
    card: (files) => {
      const { start, length, name } = files[9]!;
      const half = Math.floor(length / 2);
      const part = (mark: string, more: Partial<CardFile>): CardFile => ({
        ...files[9]!,
        name: name.replace('.wav', `_${mark}.wav`),
        ...more,
      });
      return files.toSpliced(
        9,
        1,
        part('001', { length: half }),
        part('002', { start: start! + half, length: length - half }),
      );
    },
    lines: () => [],
  },
  {
    fault: 'a backup of another recorder, its clock forty seconds off',
    card: (files) => [
      ...files.map((file) => ({ ...file, originator: 'Cart' })),
      ...files.map((file, at) => ({ ...later(file, 40), name: `B${at}.wav`, originator: 'Bag', tracks: [] })),
    ],
    lines: () => [],
  },
  {
    fault: 'a backup of a recorder of the same name',
    card: (files) => [...files, ...files.map((file, at) => ({ ...later(file, 0.4), name: `B${at}.wav` }))],
    lines: () => [],
  },
  {
    fault: 'a backup of a recorder of the same name, its clock forty seconds off',
    card: (files) => [...files, ...files.map((file, at) => ({ ...later(file, 40), name: `B${at}.wav` }))],
    lines: () => [],
    alsoThere: (files) => files.length,
  },
  {
    fault: 'a backup of the same name, its clock hours off, without some takes, at its defaults',
    card: (files) => [
      ...files,
      ...files
        .filter((_, at) => at % 5 > 0)
        .map((file, at) => ({ ...later(file, -2 * 3600), name: `B${at}.wav`, scene: 'T', take: '1' })),
    ],
    lines: () => [],
    alsoThere: (files) => files.filter((_, at) => at % 5 > 0).length,
  },
  {
    fault: 'a backup of the same name that has no timecode',
    card: (files) => [
      ...files,
      ...files.map((file, at) => ({ ...file, start: undefined, name: `B${at}.wav` })),
    ],
    lines: () => [],
    alsoThere: (files) => files.length,
  },
  ...(['names', 'rolls', 'tracks'] as const).map(
    (by): Planted => ({
      fault: `two recorders without timecode, told apart by their ${by}`,
      card: (files) => {
        const untimed = files.map((file) => ({ ...file, start: undefined }));
        const backup = untimed.map((file, at) => ({
          ...file,
          length: file.length + 4800,
          name: by === 'names' ? `B${at}.wav` : `0${file.name}`,
          ...(by === 'rolls' && { tape: 'B1' }),
          ...(by === 'tracks' && { tracks: [{ channel: 1, name: 'Backup' }] }),
        }));
        return [...untimed, ...backup];
      },
      lines: () => [],
      alsoThere: (files) => files.length,
    }),
  ),
  {
    fault: "the second unit's card",
    card: (files) => [
      ...files.map((file) => ({ ...file, originator: 'Cart' })),
      ...strange(77, { originator: 'Unit 2' }),
    ],
    lines: () => ['recordings-of-another-unit 1'],
  },
  {
    fault: "last night's files",
    card: (files) => [...files, ...strange(78, { date: '2026-10-05' })],
    lines: () => ['recordings-of-another-day 1'],
  },
  {
    fault: 'a backup that has what the first card lost',
    card: (files) => [
      ...files.filter((_, at) => at !== 11).map((file) => ({ ...file, originator: 'Cart' })),
      ...files.map((file) => ({ ...file, start: file.start! + 3 * SECOND, originator: 'Bag' })),
    ],
    lines: () => ['start-differs 1'],
  },
];

async function causesWith({ card }: Planted, filmed: Filmed) {
  const recordings = await recordCard(card(cardOf(filmed.day()), filmed));
  return { recordings, causes: causesOf(openOn(filmed.day(), recordings)) };
}
const briefly = (causes: ReturnType<typeof causesOf>): string[] =>
  causes.map(({ code, differences }) => `${code} ${differences.length}`);

describe('a card with one fault planted', () => {
  test.each(FAULTS)('$fault: exactly its lines, each settled in one tap', async (planted) => {
    const filmed = filmDay({ takes: TAKES, seed: 21 });
    const { recordings, causes } = await causesWith(planted, filmed);
    expect(briefly(causes)).toEqual(planted.lines(cardOf(filmed.day())));
    const { questions, alsoThere } = matchRecordings(filmed.day(), recordings);
    expect(questions).toEqual([]);
    if (planted.alsoThere) expect(alsoThere).toHaveLength(planted.alsoThere(cardOf(filmed.day())));
    let taps = 0;
    for (let left = causes; left.length > 0 && taps < 10; taps += 1) {
      const [cause] = left;
      const last = cause!.differences.flatMap(({ settlements }) => settlements.at(-1) ?? []);
      const said = settleAll(filmed.day(), last);
      if (said.ok) filmed.phone.say(...said.value);
      left = causesOf(openOn(filmed.day(), recordings));
    }
    expect(taps).toBe(causes.length);
  });

  test.each([1, 2, 3, 4, 5, 6])('and none has no line (seed %i)', async (seed) => {
    const rate = (['23.976', '24', '25', '29.97', '29.97DF', '30'] as const)[seed - 1]!;
    const filmed = filmDay({ takes: TAKES, seed: seed * 31, rate, fromHour: seed % 2 ? 8 : 20 });
    expect(briefly((await causesWith(FAULTS[0]!, filmed)).causes)).toEqual([]);
  });
});

test('twenty different faults of one card are settled in at most twelve taps', async () => {
  const filmed = filmDay({ takes: 72, seed: 5 });
  const files = cardOf(filmed.day());
  const odd = files.map(
    (file, at): CardFile => ({
      ...file,
      // One after the other: circles, types, notes, names, lengths, starts, slates, numbers and tracks.
      ...([3, 9, 15].includes(at) && { circled: !file.circled }),
      ...(at === 20 && { types: ['NO_GOOD'] }),
      ...([22, 40].includes(at) && { note: 'Plane' }),
      ...([24, 44].includes(at) && { name: `Z${at}.wav` }),
      ...([26, 46].includes(at) && { length: file.length + 9 * SECOND }),
      ...([28, 48].includes(at) && { start: file.start! + 5 * SECOND }),
      ...([30, 50].includes(at) && { take: String(Number(file.take) + 7) }),
      ...([32, 33].includes(at) && { tracks: file.tracks.slice(0, -1) }),
      ...(at === 52 && { bits: 16 }),
    }),
  );
  const card = [
    ...odd.filter((_, at) => ![36, 55].includes(at)),
    ...[60, 62].map((at) => ({
      ...later(files[at]!, files[at]!.length / SECOND + 4),
      name: `X${at}.wav`,
      scene: '88',
      take: '1',
      types: [],
      note: '',
      length: 12 * SECOND,
    })),
  ];
  const recordings = await recordCard(card);
  const open = openOn(filmed.day(), recordings);
  expect(open.length).toBeGreaterThanOrEqual(20);
  let taps = 0;
  for (let left = causesOf(open); left.length > 0 && taps < 40; taps += 1) {
    const { differences, ways } = left[0]!;
    const said = settleAll(filmed.day(), ways[0]?.settlements ?? [differences[0].settlements[0]!]);
    if (said.ok) filmed.phone.say(...said.value);
    left = causesOf(openOn(filmed.day(), recordings));
  }
  expect(openOn(filmed.day(), recordings)).toEqual([]);
  expect(taps).toBeLessThanOrEqual(12);
});
