import { describe, expect, test } from 'vitest';
import { addTracks } from '../../src/commands/rig/grow-rig.ts';
import { layOn } from '../../src/commands/rig/lay-on.ts';
import { layRecorder } from '../../src/commands/rig/lay-rig.ts';
import { strikeRig } from '../../src/commands/rig/strike-part.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { trackLabels } from '../../src/day/files/track-labels.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { sceneText } from '../../src/day/slate.ts';
import { readFact } from '../../src/facts/fact.ts';
import { notesFromCard, startLogFromCard } from '../../src/reconcile/start-log.ts';
import { reportOf } from '../../src/report/model.ts';
import { ok } from '../../src/shared/result.ts';
import type { Recording } from '../../src/wave/recording/recordings.ts';
import { layingPhone } from '../commands/rig-day.ts';
import { speaker } from '../day/say.ts';
import { SMALL_RIG } from '../day/small-rig.ts';
import { MIXES_BY_WORD } from '../report/mixes-by-word.ts';
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
        set: {
          sampleRate: [{ text: '48 kHz' }],
          bitDepth: [{ text: '24 bit' }],
          timecodeRate: [{ text: '25 fps' }],
          fileLayout: [{ text: 'one poly file a take' }],
        },
        rolls: wanted.head.rolls,
      });
      for (const fact of phone.facts) expect(readFact(fact)).toMatchObject({ ok: true });
    },
  );

  describe('on a day that has a rig', () => {
    /** By what each track is called: that of a mix called by a word is its place, and the word stays. */
    const names = (day: Day) =>
      answersNow(day).tracks.map(({ track, name }) => [trackLabels(day.rig).get(track.id)!, name] as const);

    test.each([
      ['laid once', 1],
      ['struck and laid anew', 2],
      ['struck and laid anew twice', 3],
    ])('%s: names the tracks that are there, and adds none', async (_, times) => {
      const recordings = await recordCard(cardOf(filmDay({ takes: 5 }).day()));
      const phone = layingPhone();
      for (let time = 0; time < times; time += 1) {
        if (time > 0) phone.run(strikeRig);
        phone.run((day) => layOn(day, layRecorder({ tracks: 5, inputs: [{ kind: 'mic', count: 2 }] })));
      }
      const ids = phone.day().rig.tracks.map(({ id }) => id);
      phone.run((day) => startLogFromCard(recordings, 'lettered', day));
      expect(phone.day().rig.tracks.map(({ id }) => id)).toEqual(ids);
      const alone = new Map(names(started(recordings).day()));
      expect(alone.get('4')).not.toBe('');
      expect(names(phone.day())).toEqual(
        ['1', '2', '3', '4', '5'].map((number) => [number, alone.get(number) ?? '']),
      );
    });

    test.each([
      ['count on from the mixes', [1, 2, 3, 4, 5]],
      ['are the numbers of the isos', [5, 6, 1, 2, 3]],
      ['are the numbers of the isos, and of the mixes too', [1, 2, 1, 2, 3]],
    ])('finds mixes L and R beside isos that count from 1 where channels %s', async (_, channels) => {
      const [file] = cardOf(filmDay({ takes: 1 }).day());
      const tracks = ['L', 'R', 'Boom', 'Ines', 'Dora'].map((name, at) => ({ channel: channels[at]!, name }));
      const recordings = await recordCard([{ ...file!, tracks }]);
      const phone = layingPhone();
      phone.run(() => ok([...SMALL_RIG, MIXES_BY_WORD]));
      const before = phone.day().rig.tracks.map(({ id, name }) => [id, name]);
      phone.run((day) => startLogFromCard(recordings, 'lettered', day));
      expect(phone.day().rig.tracks.map(({ id, name }) => [id, name])).toEqual(before);
      expect(names(phone.day()).filter(([, name]) => name !== '')).toEqual([
        ['L', 'L'],
        ['R', 'R'],
        ['1', 'Boom'],
        ['2', 'Ines'],
        ['3', 'Dora'],
      ]);
      expect(openOn(phone.day(), recordings).filter(({ code }) => code !== 'note-not-logged')).toEqual([]);
    });

    test('finds a track that was added by its number, and adds those that are not there', async () => {
      const [file] = cardOf(filmDay({ takes: 1 }).day());
      const tracks = [1, 2, 3, 4].map((channel) => ({ channel, name: `Part ${channel}` }));
      const recordings = await recordCard([{ ...file!, tracks }]);
      const phone = layingPhone();
      phone.run((day) => layOn(day, layRecorder({ tracks: 2, inputs: [{ kind: 'mic', count: 1 }] })));
      phone.run((day) => addTracks(day, 1, phone.newId));
      phone.run((day) => startLogFromCard(recordings, 'lettered', day));
      expect(phone.day().rig.tracks.map(({ id }) => id)).toEqual(['tr1', 'tr2', 'new1', 'tr4']);
      expect(names(phone.day())).toEqual(tracks.map(({ channel, name }) => [`${channel}`, name]));
    });
  });

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

const SECOND = 48_000;
const PLAIN: CardFile = {
  name: '24BT3.wav',
  project: 'Salt Road',
  scene: '24B',
  take: '3',
  tape: '7A',
  start: 36_000 * SECOND,
  length: 10 * SECOND,
  tracks: [{ channel: 1, name: 'Boom' }],
  sampleRate: SECOND,
  bits: 24,
  rate: '25/1',
};
const at = (minute: number, more: Partial<CardFile> = {}): CardFile => ({
  ...PLAIN,
  name: `F${minute}.wav`,
  take: `${minute}`,
  start: PLAIN.start! + minute * 60 * SECOND,
  ...more,
});
/** What the log says first of everything: the head, the rig, and then each roll, name and take. */
async function logOf(...files: CardFile[]) {
  const log = startLogFromCard(await recordCard(files));
  if (!log.ok) throw new Error(log.problem.code);
  return log.value;
}
const headOf = async (...files: CardFile[]) => {
  const [head] = await logOf(...files);
  return head?.kind === 'day-described' ? head.fields : {};
};

describe('the head of a log started from a card', () => {
  test('has what most files say, without blanks, cut to what a log holds', async () => {
    expect(
      await headOf(at(1, { project: ' A ' }), at(2, { project: 'B' }), at(3, { project: 'A' })),
    ).toMatchObject({ production: 'A' });
    expect(await headOf(at(1, { project: 'x'.repeat(201) }))).toMatchObject({ production: 'x'.repeat(200) });
    const { project: _, ...silent } = at(1);
    expect(await headOf(silent)).not.toHaveProperty('production');
    expect(await headOf(at(1))).not.toHaveProperty('recorder');
  });

  test('has the earliest date, and none where no file has one', async () => {
    expect(await headOf(at(1, { date: '2026-10-08' }), at(2, { date: '2026-10-07' }))).toMatchObject({
      date: '2026-10-07',
    });
    expect(await headOf(at(1, { start: undefined }))).not.toHaveProperty('date');
  });

  test('has the layout that most recordings say, and a file of one track says none', async () => {
    const set = (minute: number): CardFile[] =>
      [1, 2].map((index) =>
        at(minute, {
          name: `F${minute}_${index}.wav`,
          tracks: [{ channel: index, name: `T${index}` }],
          fileSet: { family: `M${minute}`, index, total: 2 },
        }),
      );
    const poly = (minute: number) =>
      at(minute, { tracks: [1, 2].map((channel) => ({ channel, name: `T${channel}` })) });
    expect(await headOf(...set(1), ...set(2), poly(3))).toMatchObject({ fileLayout: 'mono' });
    expect(await headOf(...set(1), poly(2), poly(3))).toMatchObject({ fileLayout: 'poly' });
    expect(await headOf(...set(1), at(2), at(3))).toMatchObject({ fileLayout: 'mono' });
    expect(await headOf(at(2), at(3))).not.toHaveProperty('fileLayout');
  });
});

describe('the takes of a log started from a card', () => {
  const takesOf = async (...files: CardFile[]) =>
    (await logOf(...files)).flatMap((draft) => (draft.kind === 'take-logged' ? [draft.fields] : []));

  test('come by date where every file has one and there are several, else round the clock', async () => {
    const named = async (...files: CardFile[]) => (await takesOf(...files)).map(({ number }) => number);
    const late = at(1, { start: 86_000 * SECOND, date: '2026-10-07' });
    const early = at(2, { start: 600 * SECOND, date: '2026-10-08' });
    expect(await named(early, late)).toEqual([1, 2]);
    expect(await named({ ...early, date: '2026-10-07' }, late)).toEqual([1, 2]);
    expect(await named({ ...early, date: '2026-10-06' }, late)).toEqual([2, 1]);
    expect(await named(at(3, { start: undefined }), at(2), at(1))).toEqual([1, 2, 3]);
  });

  test('without a number count on from the highest of their slate, wild tracks on their own', async () => {
    const { take: _, ...unnumbered } = PLAIN;
    const bare = (minute: number, more: Partial<CardFile> = {}): CardFile => ({
      ...unnumbered,
      name: `B${minute}.wav`,
      start: PLAIN.start! + minute * 60 * SECOND,
      ...more,
    });
    const numbers = (
      await takesOf(
        at(5),
        at(6, { take: '2' }),
        bare(7),
        bare(8, { scene: '25' }),
        bare(9, { scene: 'WT' }),
        bare(10, { scene: 'RT' }),
        bare(11, { scene: 'WT' }),
        bare(12),
      )
    ).map(({ kind, number, slate }) => [kind, number, slate && sceneText(slate)]);
    expect(numbers).toEqual([
      [undefined, 5, '24'],
      [undefined, 2, '24'],
      [undefined, 6, '24'],
      [undefined, 1, '25'],
      ['wild', 1, '25'],
      ['tone', 1, '25'],
      ['wild', 2, '25'],
      [undefined, 7, '24'],
    ]);
    const most = await takesOf(at(1, { take: '9999' }), bare(2));
    expect(most.map(({ number }) => number)).toEqual([9999, 9999]);
  });

  test('have their name typed where the pattern would give another', async () => {
    const files = (await takesOf({ ...PLAIN }, at(1))).map(({ file }) => file);
    expect(files).toEqual([undefined, 'F1.wav']);
  });

  test('have their roll before them, where it is another one', async () => {
    const log = await logOf(at(1), at(2, { tape: '' }), at(3, { tape: ' 7B ' }), at(4, { tape: '7B' }));
    expect(log.flatMap((draft) => (draft.kind === 'roll-changed' ? [draft.roll] : [draft.kind]))).toEqual([
      'day-described',
      'rig-laid',
      '7A',
      'track-named',
      'take-logged',
      'take-logged',
      '7B',
      'take-logged',
      'take-logged',
    ]);
  });
});

describe('the tracks of a log started from a card', () => {
  test('are those of the channels from 1 to 64, in order, a mix by its name or function', async () => {
    const tracks = [
      { channel: 64, name: 'Last' },
      { channel: 65, name: 'Beyond' },
      { channel: 2, name: 'mixdown' },
      { channel: 3, name: 'Left', function: 'L-MIX' },
      { channel: 1, name: 'Boom' },
    ];
    const [, rig] = await logOf(at(1, { tracks }), at(2, { tracks: [{ channel: 2, name: 'Ines' }] }));
    expect(rig?.kind === 'rig-laid' && rig.parts).toEqual(
      [
        [1, false],
        [2, true],
        [3, true],
        [64, false],
      ].map(([channel, mix]) => ({
        part: `tr${channel}`,
        fields: { type: 'track', name: `${channel}`, order: channel, mix, tap: mix ? 'post' : 'pre' },
      })),
    );
    const none = await logOf(at(1, { tracks: [{ channel: 65, name: 'Beyond' }] }));
    expect(none.map(({ kind }) => kind)).not.toContain('rig-laid');
  });

  test('have their names from the take on that first has them, and lose them where it has none', async () => {
    const named = (name: string) => ({ tracks: [{ channel: 1, name }] });
    const log = await logOf(
      at(1, named(' Boom ')),
      at(2, named('Boom')),
      at(3, named('Lav')),
      at(4, { tracks: [{ channel: 2, name: 'x'.repeat(201) }] }),
    );
    const told = log.map((draft) =>
      draft.kind === 'track-named' ? [draft.track, draft.name] : draft.kind === 'take-logged' ? 'take' : '',
    );
    expect(told.filter((one) => one !== '')).toEqual([
      ['tr1', 'Boom'],
      'take',
      'take',
      ['tr1', 'Lav'],
      'take',
      ['tr1', null],
      ['tr2', 'x'.repeat(200)],
      'take',
    ]);
  });
});
