import { describe, expect, test } from 'vitest';
import { filesOn } from '../../src/day/files/take-files.ts';
import { rollingAtTake } from '../../src/day/recorders/rolling.ts';
import { settingsAtTake } from '../../src/day/settings/settings.ts';
import { causesOf } from '../../src/reconcile/causes/causes.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { causeWords } from '../../src/ui/card/cause-words.ts';
import { BAG, BAG_BESIDE, CART } from '../day/two-recorders.ts';
import { type CardFile, cardOn, recordCard } from './build-card.ts';
import { byFile, checkedNow, openOn, settle, told } from './check-card.ts';
import { wiredDay } from './wired-day.ts';

const BACKUP = 'b';

/** A backup that rolls along with the cart all day, with a roll of its own. */
function backedUp(takes = 6) {
  return wiredDay(takes, (at, phone) => {
    if (at > 0) return;
    phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
    phone.say({ kind: 'part-described', part: BACKUP, fields: { type: 'recorder', name: 'Backup' } });
    phone.say({ kind: 'recorders-rolling', recorders: [CART, BACKUP] });
    phone.say({ kind: 'roll-changed', roll: 'B1', recorder: BACKUP });
  });
}

/** The cart for two takes, the bag alone for three, both for the last; the bag is set and plugged apart. */
function moved() {
  return wiredDay(6, (at, phone) => {
    if (at === 0) {
      phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } }, ...BAG_BESIDE);
      phone.say({
        kind: 'recorder-set',
        recorder: BAG,
        settings: { sampleRate: 96_000, filePattern: '{roll}_{count:3}' },
      });
      phone.say({ kind: 'roll-changed', roll: 'C1', recorder: BAG });
      phone.say({
        kind: 'leads-plugged',
        leads: [{ lead: 'bag-lead', from: 'near1out', to: 'bag-aes1' }],
      });
    }
    if (at === 2) phone.say({ kind: 'recorders-rolling', recorders: [BAG] });
    if (at === 5) phone.say({ kind: 'recorders-rolling', recorders: [CART, BAG] });
  });
}

const HOUR = 3600;
const later = (files: readonly CardFile[], seconds: number): CardFile[] =>
  files.map((file) => ({ ...file, start: file.start! + seconds * file.sampleRate }));

describe('the cards of a cart and of a backup', () => {
  const cards = (day: ReturnType<typeof backedUp>['day']) => ({
    cart: cardOn(day(), CART, 'CART 32'),
    backup: cardOn(day(), BACKUP, 'FIELD 8'),
  });

  test('with the same names: the cart’s have the takes, the backup’s are also there', async () => {
    const { day } = backedUp();
    const { cart, backup } = cards(day);
    const recordings = await recordCard([...cart, ...backup]);
    const match = matchRecordings(day(), recordings);
    expect(match.owned.map(({ key, owner }) => [key, owner])).toEqual([
      ['CART 32', CART],
      ['FIELD 8', BACKUP],
    ]);
    expect(new Set(match.pairs.map(({ recorder }) => recorder))).toEqual(new Set([CART]));
    expect([match.pairs.length, match.alsoThere.length]).toEqual([6, 6]);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('on one roll, the backup never told otherwise, are no files of one set', async () => {
    const { day } = backedUp();
    const { cart, backup } = cards(day);
    const onOneRoll = backup.map((file) => ({ ...file, tape: '7A', name: `B_${file.name}` }));
    const recordings = await recordCard([...cart, ...onOneRoll]);
    expect(recordings.map(({ files }) => files.length)).toEqual(Array.from({ length: 12 }, () => 1));
    const match = matchRecordings(day(), recordings);
    expect(match.owned.map(({ key, owner }) => [key, owner])).toEqual([
      ['CART 32', CART],
      ['FIELD 8', BACKUP],
    ]);
    expect([match.pairs.length, match.alsoThere.length]).toEqual([6, 6]);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('with clocks an hour apart have a clock each: none is late', async () => {
    const { day } = backedUp();
    const { cart, backup } = cards(day);
    const recordings = await recordCard([...cart, ...later(backup, HOUR)]);
    const { cards: found } = matchRecordings(day(), recordings);
    expect(found.map(({ recorder, toRecorder }) => [recorder, Math.round(toRecorder(0) / 1000)])).toEqual([
      [CART, 0],
      [BACKUP, HOUR],
    ]);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test.each([0, HOUR])(
    'of one make, whose clocks are %i s apart, are told apart by their rolls',
    async (apart) => {
      const { day } = backedUp();
      const files = [...cardOn(day(), CART, 'SAME'), ...later(cardOn(day(), BACKUP, 'SAME'), apart)];
      const recordings = await recordCard(files);
      const { owned } = matchRecordings(day(), recordings);
      expect(owned.map(({ owner, recordings: of }) => [owner, of.length, of[0]!.tape])).toEqual([
        [CART, 6, '7A'],
        [BACKUP, 6, 'B1'],
      ]);
      expect(openOn(day(), recordings)).toEqual([]);
    },
  );

  test('of which the backup was started late: said once, and put right in one tap', async () => {
    const { phone, ids, day } = backedUp();
    const { cart, backup } = cards(day);
    const recordings = await recordCard([...cart, ...backup.slice(2)]);
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['rolling-differs: true / false']);
    expect(causesOf(open).map((cause) => causeWords(day(), cause))).toEqual([
      '2 takes not on the card, though logged as rolling (Backup)',
    ]);
    settle(phone, byFile(open[0]!));
    expect(ids.map((id) => rollingAtTake(day(), id).length)).toEqual([1, 1, 2, 2, 2, 2]);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('of which the backup has a take that it was not logged for', async () => {
    const { phone, ids, day } = backedUp();
    const { cart, backup } = cards(day);
    phone.say({ kind: 'recorders-rolling', recorders: [CART], before: ids[3]! });
    const recordings = await recordCard([...cart, ...backup.slice(0, 5)]);
    const open = openOn(day(), recordings);
    expect(causesOf(open).map((cause) => causeWords(day(), cause))).toEqual([
      '2 takes on the card, though logged as not rolling (Backup)',
    ]);
    settle(phone, byFile(open[0]!));
    expect(ids.map((id) => rollingAtTake(day(), id).length)).toEqual([2, 2, 2, 2, 2, 1]);
  });

  test('of which only the backup has a take: it has a file, and the report’s card line names it', async () => {
    const { phone, ids, day } = backedUp();
    const { cart, backup } = cards(day);
    const recordings = await recordCard([...cart.toSpliced(1, 1), ...backup]);
    const checked = checkedNow(day(), recordings);
    expect(checked).toMatchObject({
      matched: 6,
      without: [],
      cards: [
        { recorder: CART, takes: 5, only: [] },
        { recorder: BACKUP, takes: 6, only: [ids[1]] },
      ],
    });
    phone.say({ kind: 'card-checked', ...checked });
    const line = reportText(reportOf(day())).replaceAll(/\s+/g, ' ');
    expect(line).toContain('Cart 5 takes; Backup 6 takes, 1 on no other card (24A/2)');
  });

  test('a take on neither is lost', async () => {
    const { ids, day } = backedUp();
    const { cart, backup } = cards(day);
    const recordings = await recordCard([...cart.toSpliced(1, 1), ...backup.toSpliced(1, 1)]);
    expect(openOn(day(), recordings)).toMatchObject([{ code: 'take-not-recorded', take: ids[1] }]);
  });

  test('are whose the user says, and otherwise whose they fit', async () => {
    const { day } = backedUp();
    const { cart, backup } = cards(day);
    const recordings = await recordCard([...cart, ...backup]);
    const said = matchRecordings(day(), recordings, { 'CART 32': BACKUP });
    expect(said.owned.map(({ key, owner }) => [key, owner])).toEqual([
      ['CART 32', BACKUP],
      ['FIELD 8', CART],
    ]);
    expect(differencesOf(day(), said).map(({ code }) => code)).toContain('roll-differs');
  });
});

describe('the cards of a cart and of a bag with tracks of its own', () => {
  const read = (
    day: ReturnType<typeof moved>['day'],
    change: (bag: CardFile[]) => CardFile[] = (bag) => bag,
  ) => recordCard([...cardOn(day(), CART, 'MIXER'), ...change(cardOn(day(), BAG, 'MIXER'))]);

  test('are matched each with its names, roll, rate and tracks, and nothing differs', async () => {
    const { ids, day } = moved();
    const recordings = await read(day);
    const match = matchRecordings(day(), recordings);
    expect(match.pairs.map(({ take, recorder }) => [ids.indexOf(take), recorder])).toEqual([
      [0, CART],
      [1, CART],
      [2, BAG],
      [3, BAG],
      [4, BAG],
      [5, CART],
    ]);
    expect(match.alsoThere.map(({ files }) => files[0]!.name)).toEqual(['C1_004.wav']);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('a setting that differs on the bag’s card is put right for the bag alone', async () => {
    const { phone, ids, day } = moved();
    const recordings = await read(day, (bag) =>
      bag.map((file) => ({ ...file, sampleRate: 48_000, start: file.start! / 2, length: file.length / 2 })),
    );
    const open = openOn(day(), recordings);
    expect(causesOf(open).map((cause) => causeWords(day(), cause))).toEqual([
      'Sample rate differs in 3 recordings (Bag)',
    ]);
    settle(phone, byFile(open[0]!));
    const rates = (recorder: string) => settingsAtTake(day(), ids[3]!, recorder).sampleRate;
    expect([rates(BAG), rates(CART)]).toEqual([48_000, 48_000]);
    expect(settingsAtTake(day(), ids[0]!, BAG).sampleRate).toBe(96_000);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('a roll that differs on the bag’s card is put right for the bag alone', async () => {
    const { phone, day } = moved();
    const recordings = await read(day, (bag) => bag.map((file) => ({ ...file, tape: 'C9' })));
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['roll-differs at 2: "C1" / "C9"']);
    settle(phone, byFile(open[0]!));
    expect(reportOf(day()).takes.map(({ recorders }) => recorders.map(({ roll }) => roll).join())).toEqual([
      '7A',
      '7A',
      'C9',
      'C9',
      'C9',
      '7A,C9',
    ]);
  });

  test('a name that differs on a track of the bag is told of that track', async () => {
    const { day } = moved();
    const recordings = await read(day, (bag) =>
      bag.map((file) => ({
        ...file,
        tracks: file.tracks.map((track) => (track.channel === 3 ? { ...track, name: 'Marta' } : track)),
      })),
    );
    expect(told(day(), openOn(day(), recordings))).toEqual([
      'track-name-differs at 2 on bag-tr3: "Ines" / "Marta"',
    ]);
  });

  test('files called otherwise on the bag’s card are in the report once the check is noted', async () => {
    const { phone, ids, day } = moved();
    const recordings = await read(day, (bag) => bag.map((file, at) => ({ ...file, name: `REC${at}.wav` })));
    phone.say({ kind: 'card-checked', ...checkedNow(day(), recordings) });
    expect(ids.map((id) => filesOn(day(), BAG).get(id)?.[0]?.name)).toEqual([
      undefined,
      undefined,
      'REC0.wav',
      'REC1.wav',
      'REC2.wav',
      'REC3.wav',
    ]);
    expect(filesOn(day(), CART).get(ids[5]!)?.[0]?.name).toBe('24AT6.wav');
  });

  test('a take of a recorder whose card is not here is not lost', async () => {
    const { day } = moved();
    const open = openOn(day(), await recordCard(cardOn(day(), CART, 'MIXER')));
    expect(causesOf(open).map((cause) => causeWords(day(), cause))).toEqual([
      '3 takes only on recorders whose cards are not here',
    ]);
  });
});
