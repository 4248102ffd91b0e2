import { describe, expect, test } from 'vitest';
import { settleAll } from '../../../src/commands/line/settle-card.ts';
import { CAUSE_KINDS, causesOf } from '../../../src/reconcile/causes/causes.ts';
import { type CardFile, cardOf, recordCard } from '../build-card.ts';
import { openOn } from '../check-card.ts';
import { filmDay } from '../film-day.ts';
import { named, wiredDay } from '../wired-day.ts';

const SECOND = 48_000;

function plainDay(takes = 30) {
  const filmed = filmDay({ takes, seed: 3 });
  const files = cardOf(filmed.day());
  const causes = async (card: readonly CardFile[]) => causesOf(openOn(filmed.day(), await recordCard(card)));
  return { ...filmed, files, causes };
}

const briefly = (causes: ReturnType<typeof causesOf>) =>
  causes.map(({ code, differences }) => `${code} ${differences.length}`);

describe('one line for one cause', () => {
  test('circled only in the app', async () => {
    const { files, causes } = plainDay();
    const circled = files.filter((file) => file.circled).length;
    expect(circled).toBeGreaterThan(3);
    expect(briefly(await causes(files.map((file) => ({ ...file, circled: false }))))).toEqual([
      `circled-differs ${circled}`,
    ]);
  });

  test('circled on one side only and on the other are two', async () => {
    const { files, causes } = plainDay();
    const found = await causes(files.map((file) => ({ ...file, circled: !file.circled })));
    expect(found.map(({ code }) => code)).toEqual(['circled-differs', 'circled-differs']);
  });

  test('a signed field that a recorder writes into every file', async () => {
    const { files, causes } = plainDay();
    const more = '<PRE_RECORD_SAMPLECOUNT>-1</PRE_RECORD_SAMPLECOUNT>';
    expect(briefly(await causes(files.map((file) => ({ ...file, more }))))).toEqual([
      `file-warning ${files.length}`,
    ]);
  });

  test('a rate that some files have', async () => {
    const { files, causes } = plainDay();
    const some = files.map((file, at) => (at % 2 ? { ...file, bits: 16 } : file));
    expect(briefly(await causes(some))).toEqual([
      `bit-depth-differs ${files.filter((_, at) => at % 2).length}`,
    ]);
  });

  test('files nobody logged, and takes without files', async () => {
    const { files, causes } = plainDay();
    const extra = [3, 8, 12].map((at) => ({
      ...files[at]!,
      name: `X${at}.wav`,
      scene: '99',
      take: '1',
      start: files[at]!.start! + files[at]!.length + 6 * SECOND,
      length: 9 * SECOND,
      types: [],
      note: '',
    }));
    const card = [...files.filter((_, at) => at !== 5 && at !== 20), ...extra];
    expect(briefly(await causes(card))).toEqual(['take-not-recorded 2', 'recording-not-logged 3']);
  });

  test('the wrong person on a track, in two runs', async () => {
    const { day, files } = wiredDay(8);
    const odd = files.map((file, at) => (at === 1 || at === 4 || at === 5 ? named(file, 3, 'Wind') : file));
    const [cause, ...others] = causesOf(openOn(day(), await recordCard(odd)));
    expect(others).toEqual([]);
    expect([cause!.differences.length, cause!.takes]).toEqual([2, 3]);
    expect(cause!.ways.map(({ kind }) => kind)).toEqual(['name-track', 'keep-log']);
  });
});

describe('causes', () => {
  test('are listed worst first', async () => {
    const { files, causes } = plainDay();
    const card = files
      .map((file, at) => ({
        ...file,
        bits: 16,
        circled: at === 2 ? !file.circled : file.circled === true,
        ...(at === 4 && {
          tracks: file.tracks.map((track) => (track.channel === 3 ? { ...track, name: 'Wind' } : track)),
        }),
        ...(at === 6 && { name: 'REC.wav' }),
        ...(at === 8 && { scene: '77' }),
      }))
      .toSpliced(10, 1);
    const found = await causes(card);
    const kinds = found.map(({ kind }) => kind);
    expect(kinds).toEqual(kinds.toSorted((a, b) => CAUSE_KINDS.indexOf(a) - CAUSE_KINDS.indexOf(b)));
    expect(new Set(kinds)).toEqual(new Set(CAUSE_KINDS));
  });

  test('are settled whole by one action, by the card or by the log', async () => {
    for (const kind of ['describe-takes', 'keep-log']) {
      const { phone, day, files } = plainDay();
      const recordings = await recordCard(files.map((file) => ({ ...file, circled: false })));
      const [cause] = causesOf(openOn(day(), recordings));
      const way = cause!.ways.find((one) => one.kind === kind)!;
      const said = settleAll(day(), way.settlements);
      if (said.ok) phone.say(...said.value);
      expect(openOn(day(), recordings)).toEqual([]);
    }
  });

  test('of settings say the setting once', async () => {
    const { day, files } = plainDay();
    const recordings = await recordCard(files.map((file) => ({ ...file, rate: '24/1' })));
    const [cause] = causesOf(
      openOn(day(), recordings).filter(({ code }) => code === 'timecode-rate-differs'),
    );
    const way = cause!.differences[0].settlements[0]!;
    const said = settleAll(day(), [way, way]);
    expect(said.ok && said.value.filter(({ kind }) => kind === 'day-described')).toHaveLength(1);
  });

  test('of missing files offer to say that they are missing, and no bulk removal', async () => {
    const { files, causes } = plainDay();
    const [cause] = await causes(files.slice(3));
    expect(cause!.ways.map(({ kind }) => kind)).toEqual(['file-missing']);
  });
});

describe('names that differ only in accents or case', () => {
  test.each([
    ['Inès', 'INES'],
    ['Zoë Ångström', 'Zoe Angstrom'],
    ['Łukasz', 'Lukasz'],
    ['Søren', 'Soren'],
    ['Ксенија', 'КСЕНИЈА'],
  ])('%s and %s are the same name', async (part, name) => {
    const { phone, day, files } = wiredDay(1);
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part } });
    expect(openOn(day(), await recordCard([named(files[0]!, 3, name)]))).toEqual([]);
  });
});
