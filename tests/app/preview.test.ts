import { describe, expect, test } from 'vitest';
import { readAsFarAsPossible } from '../../src/app/import-files.ts';
import { takeText } from '../../src/day/slate.ts';
import { ADMIT_LIMITS } from '../../src/facts/day-file/admit.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { changeText } from '../../src/report/revision/change.ts';
import { factId } from '../../src/shared/ids.ts';
import { disputeWords, previewLines } from '../../src/ui/days/preview-words.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { phoneWith } from '../hostile/phone.ts';

const read = (facts: readonly Envelope[], name = 'day.txt') =>
  readAsFarAsPossible(name, writeDayFile('day-1', 'Harbour', facts));

/** A morning that two phones share, and what the other one said since. */
function twoPhones(...since: Draft[]) {
  const morning = speaker('phonea');
  morning.say({ kind: 'day-described', fields: { production: 'Harbour Lights', label: 'Day 4' } });
  morning.say(...SMALL_RIG, ...SMALL_CAST);
  const first = morning.id(take('24', 1, 1));
  const other = speaker('phonec', MORNING + 3_600_000);
  for (const draft of since) other.say(draft);
  return { morning: morning.facts, other: other.facts as Fact[], first };
}

describe('what a file would change', () => {
  test('of a day that the phone has not is all of it, and nothing is written by looking', async () => {
    const { app, held } = await phoneWith([]);
    const before = await held();
    const { morning } = twoPhones();
    const [preview] = await app.preview([read(morning)]);
    expect(preview).toMatchObject({
      day: 'day-1',
      isNew: true,
      fresh: morning.length,
      known: 0,
      disputes: [],
    });
    expect(preview!.after.header).toMatchObject({ production: 'Harbour Lights', label: 'Day 4' });
    expect(preview!.changes!.added.map(takeText)).toEqual(['24A/1']);
    expect(previewLines(preview!)).toEqual([`${morning.length} new entries`, 'Adds 1 take: 24A/1.']);
    expect(await held()).toBe(before);
    expect(app.current()).toBeUndefined();
  });

  test('of a known day is its name, its takes, an open take and every conflict it brings', async () => {
    const { morning, other, first } = twoPhones(
      { kind: 'day-described', fields: { production: 'Changed by a stranger' } },
      take('24', 1, 1),
      take('24', 1, 2),
      take('25', 0, 1, { length: undefined, start: null, rolledAt: MORNING }),
    );
    const { app, held } = await phoneWith(morning);
    const before = await held();
    const gone: Fact = { ...other[0]!, kind: 'fact-retracted', targets: [first], by: 'hand' } as Fact;
    const [preview] = await app.preview([read([...morning, ...other])]);
    const { changes } = preview!;
    expect(preview).toMatchObject({ isNew: false, fresh: other.length, known: morning.length });
    expect(changes!.head.map(changeText)).toEqual([
      'Production: was Harbour Lights, is Changed by a stranger.',
    ]);
    expect(changes!.added.map(takeText)).toEqual(['24A/1', '24A/2', '25/1']);
    expect(changes!.opened.map(takeText)).toEqual(['25/1']);
    expect(changes!.conflicts.map(({ kind }) => kind)).toContain('take-twice');
    const lines = previewLines(preview!).join('\n');
    expect(lines).toContain('25/1 is still rolling on the other phone, and would be here too.');
    expect(lines).toMatch(/Brings \d conflicts?: .*24A\/1 was logged twice/);
    // And a take that would go.
    const [away] = await app.preview([read([...morning, { ...gone, id: factId(5000, 'phonec00000') }])]);
    expect(away!.changes!.gone.map(takeText)).toEqual(['24A/1']);
    expect(previewLines(away!)).toContain('Removes 1 take: 24A/1.');
    expect(await held()).toBe(before);
  });

  test('is what taking it in does', async () => {
    const { morning, other } = twoPhones(take('24', 1, 2), {
      kind: 'transmitter-worn',
      transmitter: 'A1',
      voice: 'ines',
    });
    const { app } = await phoneWith(morning);
    const files = [read([...morning, ...other.slice(0, 1)], 'one'), read([...morning, ...other], 'two')];
    const [preview] = await app.preview(files);
    const imported = await app.importFiles(files);
    const day = (await app.open('day-1')).day.value;
    expect(imported.fresh).toBe(preview!.fresh);
    expect(day.facts.map(({ id }) => id)).toEqual(preview!.after.facts.map(({ id }) => id));
    expect((await app.preview(files))[0]).toMatchObject({ fresh: 0, known: 2 * morning.length + 3 });
    expect(previewLines((await app.preview(files))[0]!)).toEqual([expect.stringMatching(/^Nothing new/)]);
  });

  test('is refused with its reason where it may not come in, and tells both sides of what is disputed', async () => {
    const { morning, other } = twoPhones(take('24', 1, 2));
    const { app } = await phoneWith(morning);
    const late = { ...other[0]!, at: MORNING + ADMIT_LIMITS.aheadMs + 1 };
    const [dated] = await app.preview([read([...morning, late])]);
    expect(dated).toMatchObject({ fresh: 0, refused: [{ problem: { code: 'admit-date' } }] });
    const sooner = { ...other[0]!, at: MORNING + 40 * 86_400_000 };
    expect(previewLines((await app.preview([read([...morning, sooner])]))[0]!)).toContain(
      "Dated later than this phone's clock, up to 2026-11-16.",
    );
    const renamed = {
      ...morning[0]!,
      ...({ fields: { production: 'Harbour Nights', label: 'Day 4' } } as object),
    };
    const [disputed] = await app.preview([read([renamed, ...morning.slice(1), ...other])]);
    expect(disputed).toMatchObject({
      fresh: 1,
      refused: [],
      disputes: [{ here: morning[0], there: renamed }],
    });
    expect(disputeWords(disputed!.after, disputed!.disputes[0]!)).toMatch(/Harbour Lights.*Harbour Nights/);
    const rig = morning.find(({ kind }) => kind === 'rig-laid')!;
    const flipped = JSON.parse(JSON.stringify(rig).replace('"name":"AES 2"', '"name":"AES 7"'));
    const [laid] = await app.preview([read(morning.map((fact) => (fact === rig ? flipped : fact)))]);
    expect(disputeWords(laid!.after, laid!.disputes[0]!)).toMatch(
      /parts \d+ name: here AES 2, in the file AES 7\./,
    );
  });
});
