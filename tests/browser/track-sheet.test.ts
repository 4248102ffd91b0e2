import { describe, expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Fact } from '../../src/facts/fact.ts';
import { type Speaker, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { onStage, type Stage } from './harness.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { paste } from './tapping.ts';

const AT = { clock: '2026-10-07T18:00:00Z' };

/** Opens a day that somebody said, as a file that is imported. */
async function openSaid({ page, waitSaved }: Stage, { facts }: Speaker): Promise<void> {
  await page.getByRole('button', { name: 'Import day file' }).tap();
  await paste(page.getByLabel('Or paste the text'), writeDayFile('day-1', 'Harbour Lights', facts));
  await page.getByRole('button', { name: 'Import what was pasted' }).tap();
  await page.locator('.dock').waitFor();
  await waitSaved();
}

const send = (phone: Speaker, ...routes: readonly [input: string, track: string][]): void => {
  phone.say({ kind: 'inputs-sent', routes: routes.map(([input, track]) => ({ input, tracks: [track] })) });
};

/** Track 3 has Dora's A2 for four takes, and Ines's A1 from the fifth on. */
function trackChangesHands(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  send(phone, ['aes1', 'tr4'], ['aes2', 'tr3']);
  for (const number of [1, 2, 3, 4]) phone.say(take('24', 0, number));
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  send(phone, ['aes1', 'tr3'], ['aes2', 'tr4']);
  phone.say(take('24', 0, 5));
  return phone;
}

describe('the sheet of a track', () => {
  test('stays with the pack that it was opened for when an earlier place is looked at, and moves that one', async () => {
    await onStage(AT, async (stage) => {
      await openSaid(stage, trackChangesHands());
      const { page, tap, inSheet, closed } = hands(stage);
      const heading = () => page().getByRole('dialog').getByRole('heading').first();
      await tap(/Ines/);
      expect(await heading().textContent()).toBe('A1 is on Ines');
      await inSheet('earlier');
      expect(await page().getByRole('button', { name: 'before 24/2' }).getAttribute('aria-pressed')).toBe(
        'true',
      );
      // Dora's A2 was on track 3 then; the sheet is about A1 all the same, and says where that was.
      expect(await heading().textContent()).toBe('A1 is on nobody');
      await page().getByRole('dialog').getByText('not on track 3').waitFor();
      await page().getByRole('list', { name: 'Give A1 to' }).waitFor();
      await inSheet(/^Tomas/);
      await closed();
      await stage.waitSaved();
      const said = (await storedFacts(page(), openDayId(page()))) as Fact[];
      expect(said.at(-1)).toMatchObject({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
    });
  });

  test('goes over to whoever else is on the track only when they are tapped', async () => {
    await onStage(AT, async (stage) => {
      await openSaid(stage, trackChangesHands());
      const { page, tap, inSheet } = hands(stage);
      const heading = () => page().getByRole('dialog').getByRole('heading').first();
      await tap(/Ines/);
      await inSheet('earlier');
      await page().getByRole('group', { name: 'Which of them' }).getByRole('button', { name: 'Dora' }).tap();
      expect(await heading().textContent()).toBe('A2 is on Dora');
      await inSheet('now');
      expect(await heading().textContent()).toBe('A2 is on Dora');
      await page().getByRole('dialog').getByText('not on track 3').waitFor();
    });
  });

  test('opened from an input is about whoever comes by that input, and not by another of the same track', async () => {
    const phone = trackChangesHands();
    send(phone, ['aes2', 'tr3'], ['aes3', 'tr3']);
    await onStage(AT, async (stage) => {
      await openSaid(stage, phone);
      const { page, tap, inSheet } = hands(stage);
      const heading = page().getByRole('dialog').getByRole('heading');
      await tap(/sources/);
      await inSheet(/^AES 2/);
      await page().getByRole('heading', { name: 'A2 is on Dora' }).waitFor();
      await inSheet('Close');
      await tap(/sources/);
      // Nobody comes by this one.
      await inSheet(/^AES 3/);
      await expect.poll(() => heading.first().textContent()).toBe('Ines, Dora');
    });
  });

  test('says before the tap which takes would clash if a gang ended, and ends it', async () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
    send(phone, ['aes2', 'tr3']);
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    for (const number of [1, 2, 3]) phone.say(take('24', 0, number));
    await onStage(AT, async (stage) => {
      await openSaid(stage, phone);
      const { page, tap, inSheet, closed } = hands(stage);
      await tap(/Ines, Dora/);
      await inSheet('before 24/2');
      await expect
        .poll(() => page().locator('.action-effects').textContent())
        .toBe('Ends it from 24/2 on. 2 takes would clash: 24/2 and 24/3.');
      await inSheet('End the gang');
      await closed();
      expect(await page().locator('.summary').textContent()).toContain('1 clash');
      await tap(/Ines, Dora/);
      await inSheet('before 24/2');
      await expect
        .poll(() => page().locator('.action-effects').textContent())
        .toBe('Settles 2 takes, 24/2 to 24/3, and goes on from here.');
    });
  });
});
