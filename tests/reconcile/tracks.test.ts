import { describe, expect, test } from 'vitest';
import { reportOf } from '../../src/report/model.ts';
import { differenceWords } from '../../src/ui/card/difference-words.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { MIXES_BY_WORD } from '../report/mixes-by-word.ts';
import { type CardFile, cardOf, type FileTrack, recordCard } from './build-card.ts';
import { byFile, openOn, settle, told } from './check-card.ts';
import { named, onTrack, wiredDay } from './wired-day.ts';

describe('names of tracks', () => {
  test.each([
    ['in other case, width and spacing', 3, ' ｉｎｅｓ '],
    ['the recorder gives by itself', 3, 'Tr 3'],
    ['that are empty', 3, ''],
    ['of a mix, whatever they are', 1, 'MixL'],
  ])('%s are no difference', async (_, channel, name) => {
    const { day, files } = wiredDay(2);
    expect(openOn(day(), await recordCard(files.map((file) => named(file, channel, name))))).toEqual([]);
  });

  test('of a gang may be one of them or all, in any order and with any mark between', async () => {
    const { phone, day } = wiredDay(0);
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    phone.say(take('24', 1, 1));
    const [file] = cardOf(day());
    for (const name of ['Ines', 'DORA/INES', 'Ines + Dora', 'Ines, Dora'])
      expect(openOn(day(), await recordCard([named(file!, 3, name)]))).toEqual([]);
    const [found] = openOn(day(), await recordCard([named(file!, 3, 'Ines/Tomas')]));
    expect(found).toMatchObject({ code: 'track-name-differs', was: 'Ines, Dora', is: 'Ines/Tomas' });
  });

  test('of somebody muted may stand, be left out, or be unarmed', async () => {
    const { phone, day } = wiredDay(0);
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    phone.say(take('24', 1, 1));
    const [file] = cardOf(day());
    const unarmed = { ...file!, tracks: file!.tracks.filter(({ channel }) => channel !== 3) };
    for (const one of [file!, named(file!, 3, ''), unarmed])
      expect(openOn(day(), await recordCard([one]))).toEqual([]);
  });

  test('cut by the recorder at eight characters are no difference, shorter ones are', async () => {
    const { phone, day, files } = wiredDay(1);
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Lighthouse keeper' } });
    expect(openOn(day(), await recordCard([named(files[0]!, 3, 'Lighthou')]))).toEqual([]);
    expect(openOn(day(), await recordCard([named(files[0]!, 3, 'Light')]))).toHaveLength(1);
  });

  test('are compared by the number of the channel, not by its place in the file', async () => {
    const { day, files } = wiredDay(2);
    const turned = files.map((file) => ({ ...file, tracks: file.tracks.toReversed() }));
    expect(openOn(day(), await recordCard(turned))).toEqual([]);
  });

  test('are not compared where the files say nothing of tracks', async () => {
    const { day, files } = wiredDay(2);
    const silent = files.map((file) => ({ ...file, tracks: [] as FileTrack[] }));
    expect(openOn(day(), await recordCard(silent))).toEqual([]);
  });

  test('that differ over several takes are one difference, and one tap types them there only', async () => {
    const { phone, day, files } = wiredDay(4);
    const odd = files.map((file, at) => (at === 1 || at === 2 ? named(file, 3, 'Wind') : file));
    const recordings = await recordCard(odd);
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['track-name-differs at 1 on tr3: "Ines" / "Wind"']);
    settle(phone, byFile(open[0]!));
    expect(onTrack(day, 'tr3')).toEqual(['Ines', 'Wind', 'Wind', 'Ines']);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('of somebody where the log has nobody are told', async () => {
    const { day, files } = wiredDay(1);
    const more = { ...files[0]!, tracks: [...files[0]!.tracks, { channel: 5, name: 'Tomas' }] };
    expect(told(day(), openOn(day(), await recordCard([more])))).toEqual([
      'track-name-differs at 0 on tr5: "" / "Tomas"',
    ]);
  });

  test('a track with somebody on it that the files do not hold is lost sound', async () => {
    const { day, files } = wiredDay(1);
    const fewer = { ...files[0]!, tracks: files[0]!.tracks.filter(({ channel }) => channel !== 4) };
    const [found] = openOn(day(), await recordCard([fewer]));
    expect(found).toMatchObject({ code: 'track-not-recorded', track: 'tr4', was: 'Dora', severity: 'lost' });
  });
});

describe('tracks of a recorder with mixes L and R and isos that count from 1', () => {
  /** A take of that recorder, its files with these channels for L, R and the isos 1 to 3. */
  async function checked(channels: readonly number[], names: readonly string[] = ['Mix L', 'Mix R']) {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, MIXES_BY_WORD);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
    phone.say(take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const tracks = [...names, 'Boom', 'Ines', 'Dora'].map((name, at) => ({ channel: channels[at]!, name }));
    return async (change: (file: CardFile) => CardFile = (one) => one) =>
      told(phone.day(), openOn(phone.day(), await recordCard([change({ ...file!, tracks })])));
  }

  test.each([
    ['count on from the mixes', [1, 2, 3, 4, 5]],
    ['are the numbers of the isos, the mixes behind them', [5, 6, 1, 2, 3]],
    ['are the numbers of the isos, and the mixes count from 1 too', [1, 2, 1, 2, 3]],
  ])('are found where the channels of the files %s', async (_, channels) => {
    for (const names of [
      ['Mix L', 'Mix R'],
      ['L', 'R'],
    ]) {
      const check = await checked(channels, names);
      expect(await check()).toEqual([]);
      const other = await check((file) => ({
        ...file,
        tracks: file.tracks.map((track) => (track.name === 'Ines' ? { ...track, name: 'Tomas' } : track)),
      }));
      expect(other).toEqual(['track-name-differs at 0 on tr3: "Ines" / "Tomas"']);
      const fewer = await check((file) => ({
        ...file,
        tracks: file.tracks.filter(({ name }) => name !== 'Boom'),
      }));
      expect(fewer).toEqual(['track-not-recorded at 0 on tr2: "Boom" / null']);
    }
  });

  test('are called in a difference as in the report', async () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, MIXES_BY_WORD);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say(take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const tracks = ['Mix', 'Mix', 'Boom', 'Dora'].map((name, at) => ({ channel: at + 1, name }));
    const [found] = openOn(phone.day(), await recordCard([{ ...file!, tracks }]));
    expect(found).toMatchObject({ code: 'track-name-differs', track: 'tr3', detail: { number: '2' } });
  });
});

describe('tracks that went round', () => {
  /** Ines on track 3, Dora on 4 and Tomas on 5 in the log; in two files each is one track further down. */
  const gone = () => {
    const all = wiredDay(4, (at, phone) => {
      if (at === 0) phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
    });
    const round = (file: CardFile): CardFile => named(named(named(file, 3, 'Dora'), 4, 'Tomas'), 5, 'Ines');
    return { ...all, files: all.files.map((file, at) => (at === 1 || at === 2 ? round(file) : file)) };
  };

  test('three at once are one difference over a run of takes', async () => {
    const { day, files } = gone();
    const open = openOn(day(), await recordCard(files));
    expect(told(day(), open)).toEqual([
      'tracks-swapped at 1 on tr3: "Ines, Dora, Tomas" / "Dora, Tomas, Ines"',
    ]);
    expect(differenceWords(day(), open[0]!)).toBe('Tracks 3, 4 and 5 are swapped in 2 takes');
  });

  test.each([
    ['packs', 0],
    ['inputs', 1],
  ])('and settled in one tap, by %s, there only', async (by, at) => {
    const { phone, day, files } = gone();
    const recordings = await recordCard(files);
    const [open] = openOn(day(), recordings);
    const settlement = open!.settlements[at]!;
    expect(settlement).toMatchObject({ kind: 'swap-tracks', swap: { by } });
    settle(phone, settlement);
    expect(onTrack(day, 'tr3')).toEqual(['Ines', 'Dora', 'Dora', 'Ines']);
    expect(onTrack(day, 'tr4')).toEqual(['Dora', 'Tomas', 'Tomas', 'Dora']);
    expect(onTrack(day, 'tr5')).toEqual(['Tomas', 'Ines', 'Ines', 'Tomas']);
    expect(openOn(day(), recordings)).toEqual([]);
  });
});

describe('a change that was said too late', () => {
  test('is offered to go before the take whose file already has it', async () => {
    const truth = wiredDay(4, (at, phone) => {
      if (at === 1) phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
    });
    const { phone, day } = wiredDay(4, (at, speaking) => {
      if (at === 3) speaking.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
    });
    const recordings = await recordCard(truth.files);
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['track-name-differs at 1 on tr3: "Ines" / "Tomas"']);
    expect(byFile(open[0]!)).toMatchObject({ kind: 'move-changes', before: [...day().takes.keys()][1] });
    settle(phone, byFile(open[0]!));
    expect(onTrack(day, 'tr3')).toEqual(['Ines', 'Tomas', 'Tomas', 'Tomas']);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('is moved with those it needs and without those it does not', async () => {
    const changes = (speaking: ReturnType<typeof speaker>) => {
      speaking.say({ kind: 'voices-needed', voices: [{ voice: 'tomas', need: 'needed' }] });
      speaking.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
      speaking.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: ['tr4'] }] });
      speaking.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr5'] }] });
    };
    const truth = wiredDay(2, (at, phone) => void (at === 1 && changes(phone)));
    const { phone, day } = wiredDay(3, (at, speaking) => void (at === 2 && changes(speaking)));
    const recordings = await recordCard([...truth.files, cardOf(day())[2]!]);
    const moved: string[] = [];
    for (let [found] = openOn(day(), recordings); found; [found] = openOn(day(), recordings)) {
      const settlement = byFile(found);
      if (settlement.kind !== 'move-changes') throw new Error(`Not by moving: ${settlement.kind}`);
      moved.push(...settlement.changes);
      settle(phone, settlement);
    }
    const kinds = moved.map((id) => phone.facts.find((fact) => fact.id === id)!.kind);
    expect(kinds.sort()).toEqual(['inputs-sent', 'inputs-sent', 'transmitter-worn']);
  });

  test('is not offered where moving it would make another track wrong', async () => {
    // One fact swaps two tracks; the file has the new name on one of them and the old one on the other.
    const swap = (at: number, speaking: ReturnType<typeof speaker>): void => {
      if (at === 2)
        speaking.say({
          kind: 'channels-tuned',
          tunings: [
            { channel: 'near1', transmitter: 'A2' },
            { channel: 'near2', transmitter: 'A1' },
          ],
        });
    };
    const { day, files } = wiredDay(3, swap);
    const [half] = openOn(day(), await recordCard(files.with(1, named(files[1]!, 3, 'Dora'))));
    expect(half!.settlements.map(({ kind }) => kind)).toEqual(['name-track', 'keep-log']);
    const both = openOn(
      day(),
      await recordCard(files.with(1, named(named(files[1]!, 3, 'Dora'), 4, 'Ines'))),
    );
    expect(both.map(({ settlements }) => settlements.map(({ kind }) => kind))).toEqual([
      ['move-changes', 'swap-tracks', 'swap-tracks', 'keep-log'],
    ]);
  });
});

describe('rolls', () => {
  test('that changed later than the card says are one difference, settled by moving the change', async () => {
    const { phone, day, files } = wiredDay(5, (at, speaking) => {
      if (at === 3) speaking.say({ kind: 'roll-changed', roll: '7B' });
    });
    const recordings = await recordCard(files.map((file, at) => ({ ...file, tape: at >= 2 ? '7B' : '7A' })));
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['roll-differs at 2: "7A" / "7B"']);
    expect(byFile(open[0]!).kind).toBe('move-changes');
    settle(phone, byFile(open[0]!));
    expect(reportOf(day()).takes.map(({ roll }) => roll)).toEqual(['7A', '7A', '7B', '7B', '7B']);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('of one file only come back after it', async () => {
    const { phone, day, files } = wiredDay(4);
    const recordings = await recordCard(files.with(1, { ...files[1]!, tape: 'X' }));
    const [found] = openOn(day(), recordings);
    settle(phone, byFile(found!));
    expect(reportOf(day()).takes.map(({ roll }) => roll)).toEqual(['7A', 'X', '7A', '7A']);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('written with other marks and zeros are the same', async () => {
    const { phone, day, files } = wiredDay(2);
    phone.say({ kind: 'roll-changed', roll: 'R-007', before: [...day().takes.keys()][0]! });
    expect(openOn(day(), await recordCard(files.map((file) => ({ ...file, tape: 'r7' }))))).toEqual([]);
  });
});
