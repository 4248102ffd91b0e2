import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/facts/fact.ts';
import { bigDay } from '../day/big-day.ts';
import { type Speaker, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';
import { openDayId, storedFacts } from './stored-facts.ts';

const AT = { clock: '2026-10-07T18:00:00Z' };

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
      // Looking at earlier takes turns nothing into something else.
      await inSheet('earlier');
      expect(await heading().textContent()).toBe('A1 is on Ines');
      expect(await page().getByRole('button', { name: 'now' }).getAttribute('aria-pressed')).toBe('true');
      await inSheet('before 24/2');
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
      await inSheet('before 24/2');
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
      await expect.poll(() => heading.first().textContent()).toBe('Track 3: clash');
    });
  });

  test('opened from a clash stays with its track, and says where there is none', async () => {
    await onStage({ ...AT, viewport: { width: 360, height: 640 } }, async (stage) => {
      await openSaid(stage, bigDay());
      const { page, tap, inSheet } = hands(stage);
      const heading = () => page().getByRole('dialog').getByRole('heading').first().textContent();
      const under = () => page().getByRole('dialog').locator('.sheet-head p').textContent();
      const strip = page().getByRole('dialog').locator('.from-when');
      await tap(/Marek, Usher/);
      await page().getByRole('dialog').waitFor();
      expect([await heading(), await under()]).toEqual(['Track 22: clash', 'Marek and Usher, since 45A/1']);
      expect(await strip.getByText('now, after 45A/6').count()).toBe(1);
      await inSheet('earlier');
      expect([await heading(), await under()]).toEqual(['Track 22: clash', 'Marek and Usher, since 45A/1']);
      await inSheet('earlier');
      await inSheet('before 44/6');
      expect([await heading(), await under()]).toEqual([
        'Track 22: Marek',
        'before 44/6 · Marek, since 44/1',
      ]);
      await page().getByRole('dialog').getByText('No clash on track 22 before 44/6.').waitFor();
      expect(await page().getByRole('button', { name: /^Gang/ }).count()).toBe(0);
      // Whose pack is given stays too, and so do the mark and now, wherever the strip is turned to.
      await page().getByRole('list', { name: 'Give A19 to' }).waitFor();
      await inSheet('later');
      await inSheet('later');
      const inSight = async (name: string): Promise<boolean> => {
        const box = (await strip.getByRole('button', { name }).boundingBox())!;
        return box.x >= 0 && box.x + box.width <= 360;
      };
      expect(await strip.getByText('before 44/6', { exact: true }).count()).toBe(1);
      expect([await inSight('before 44/6, here'), await inSight('now')]).toEqual([true, true]);
      await inSheet('now');
      expect(await heading()).toBe('Track 22: clash');
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
