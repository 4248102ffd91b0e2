import { describe, expect, test } from 'vitest';
import { causesOf } from '../../src/reconcile/causes/causes.ts';
import { causeWords } from '../../src/ui/card/cause-words.ts';
import { cardOf, recordCard } from './build-card.ts';
import { checkedNow, openOn, told } from './check-card.ts';
import { wiredDay } from './wired-day.ts';

/** Six takes, the third and fourth on a backup only. */
function partlyOnBackup() {
  const { phone, ids, day } = wiredDay(6, (at, speaking) => {
    if (at === 0)
      speaking.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } });
    if (at === 2) speaking.say({ kind: 'recorders-rolling', recorders: ['b'] });
    if (at === 4) speaking.say({ kind: 'recorders-rolling', recorders: ['recorder', 'b'] });
  });
  const files = cardOf(phone.day()).map((file) => ({ ...file, tape: '7A', originator: 'Cart' }));
  return { ids, day, files, main: files.filter((_, at) => at !== 2 && at !== 3) };
}

describe('a take that the first recorder did not roll on', () => {
  test('is only on a backup, and no lost file of the main card', async () => {
    const { ids, day, main } = partlyOnBackup();
    const recordings = await recordCard(main);
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual([
      'take-on-backup-only at 2: "24A/3" / ["Backup"]',
      'take-on-backup-only at 3: "24A/4" / ["Backup"]',
    ]);
    const causes = causesOf(open);
    expect(causes.map((cause) => causeWords(day(), cause))).toEqual([
      '2 takes only on recorders whose cards are not here',
    ]);
    expect(causes[0]).toMatchObject({ kind: 'notes', ways: [{ kind: 'keep-log' }] });
    expect(checkedNow(day(), recordings)).toMatchObject({ matched: 4, without: [] });
    const [lost] = openOn(day(), await recordCard(main.slice(1)));
    expect(lost).toMatchObject({ code: 'take-not-recorded', take: ids[0] });
  });

  test('is not on the card once the card of the backup is there and lacks it', async () => {
    const { ids, day, files, main } = partlyOnBackup();
    const backup = files.map((file, at) => ({
      ...file,
      name: `B${at}.wav`,
      originator: 'Bag',
      start: file.start! + 20_000,
    }));
    expect(openOn(day(), await recordCard([...main, ...backup]))).not.toContainEqual(
      expect.objectContaining({ code: 'take-on-backup-only' }),
    );
    const lacking = openOn(day(), await recordCard([...main, ...backup.toSpliced(3, 1)]));
    expect(lacking.filter(({ take }) => take === ids[3]).map(({ code }) => code)).toEqual([
      'take-not-recorded',
    ]);
  });
});
