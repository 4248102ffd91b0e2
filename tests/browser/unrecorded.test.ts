import { expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';

test('a performer who lost the pack and one who is muted are said on the first screen, until they rest or are heard', async () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  phone.say({ kind: 'voices-needed', voices: [{ voice: 'dora', need: 'needed' }] });
  await onStage({ clock: '2026-10-07T18:00:00Z' }, async (stage) => {
    const { page, tap, inSheet, closed } = hands(stage);
    await tap('Import day file');
    await page()
      .getByLabel('Or paste the text')
      .fill(writeDayFile('day-1', 'Harbour Lights', phone.facts));
    await tap('Import what was pasted');
    await page().locator('.dock').waitFor();
    const summary = () => page().locator('.summary').textContent();
    expect(await summary()).toContain('· everyone recorded');

    await tap(/Ines/);
    await inSheet(/^Tomas/);
    await closed();
    expect(await summary()).toContain('Ines not recorded');
    expect(await summary()).not.toContain('everyone recorded');
    const lost = page().getByRole('button', { name: /^– .*Ines no longer wears a pack not recorded/ });
    await lost.tap();
    await inSheet('not in this setup');
    await inSheet('Close');
    await closed();
    expect(await summary()).toContain('· everyone recorded');

    await tap(/Dora/);
    await inSheet(/^Mute AES 2/);
    await closed();
    expect(await summary()).toContain('Dora not recorded');
    expect(await summary()).toContain('1 muted');
    await page()
      .getByRole('button', { name: /Dora AES 2 muted not recorded/ })
      .tap();
    await inSheet('Unmute AES 2');
    await inSheet('Close');
    await closed();
    expect(await summary()).toContain('· everyone recorded');
  });
});
