import { describe, expect, test } from 'vitest';
import { bigDay } from '../day/big-day.ts';
import { onStage } from './harness.ts';
import { isInReach } from './in-reach.ts';
import { layoutFaults } from './layout-faults.ts';
import { openSaid } from './said-day.ts';

const CLOCK = '2026-10-07T12:00:00Z';
const PHONES = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
];

interface Promised {
  readonly action: string;
  readonly first: RegExp;
  readonly second: RegExp;
  readonly says: RegExp;
}

/** What README promises in two taps from the first screen. */
const PROMISED: readonly Promised[] = [
  { action: 'a usual note', first: /^note 6 take/, second: /^phone$/, says: /Noted on 45A\/6: phone/ },
  { action: 'a pack for who has none', first: /Wiktoria/, second: /^Bride/, says: /A1 on Bride/ },
  { action: 'mute', first: /Rozália/, second: /^Mute/, says: /muted/i },
  { action: 'a selector', first: /Conductor/, second: /^selector 3 to/, says: /selector 3 to far box/ },
  { action: 'a gang', first: /Marek, Usher/, second: /^Gang: on purpose/, says: /Ganged on purpose/ },
  { action: 'a clash by mute', first: /Marek, Usher/, second: /^Mute Usher$/, says: /Usher muted/ },
  {
    action: 'a clash by another track',
    first: /Marek, Usher/,
    second: /^Move Usher to free track 23$/,
    says: /Usher on track 23/,
  },
  { action: 'a pack, from who is not recorded', first: /– .*Bride/, second: /^A1 /, says: /A1 on Bride/ },
  {
    action: 'a swap of booms',
    first: /Boom Jurrien/,
    second: /^Swap with Boom Saskia$/,
    says: /Boom Jurrien and Boom Saskia swapped/,
  },
  { action: 'the end of a gang', first: /Fireman, Orsolya/, second: /^End the gang$/, says: /Gang ended/ },
];

/** What leads to a sheet, and its main action. */
interface Opened {
  readonly sheet: string;
  readonly taps: readonly RegExp[];
  readonly main: readonly RegExp[];
}

const SHEETS: readonly Opened[] = [
  {
    sheet: 'a take',
    taps: [/45A\/6/],
    main: [/^circle$/i, /^note$/i, /^edit$/i, /^move$/i, /^remove$/i],
  },
  { sheet: 'a note', taps: [/^note 6 take/], main: [/^NG$/, /^plane$/, /^phone$/, /^Add note$/] },
  {
    sheet: 'the slate',
    taps: [/^Slate 45A/],
    main: [/^Next setup/, /^Pickup/, /^Wild track/, /^Room tone/, /^MOS/, /^Use this slate$/],
  },
  { sheet: 'the day', taps: [/^About this day/], main: [/^Save$/] },
  {
    sheet: 'the clock',
    taps: [/^Sync to recorder/],
    main: [/^Tap when it reads/],
  },
  {
    sheet: 'a late take',
    taps: [/^Slate 45A/, /^Log a missed take/],
    main: [/^Log this take$/],
  },
];

describe.each(PHONES)('with 24 performers at $width x $height', (viewport) => {
  test.each(PROMISED)('$action is two taps, and the second is on the screen without scrolling', (promised) =>
    onStage({ viewport, clock: CLOCK }, async (stage) => {
      await openSaid(stage, bigDay());
      const { page } = stage;
      await page.getByRole('button', { name: promised.first }).first().tap();
      await isInReach(stage, promised.second);
      await page.getByRole('dialog').getByRole('button', { name: promised.second }).first().tap();
      await page.getByRole('status').filter({ hasText: promised.says }).waitFor({ state: 'attached' });
    }),
  );

  test('the main action of every sheet is on the screen without scrolling', () =>
    onStage({ viewport, clock: CLOCK }, async (stage) => {
      await openSaid(stage, bigDay());
      const { page } = stage;
      for (const { sheet, taps, main } of SHEETS) {
        if (sheet === 'a take') await page.getByRole('link', { name: 'Line', exact: true }).tap();
        for (const [at, name] of taps.entries()) {
          const within = at === 0 ? page : page.getByRole('dialog');
          await within.getByRole('button', { name }).first().tap();
        }
        for (const action of main) await isInReach(stage, action);
        await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
        await page.getByRole('dialog').waitFor({ state: 'detached' });
        if (sheet === 'a take') await page.getByRole('link', { name: 'Now', exact: true }).tap();
      }
    }));

  test('no sheet of a big cast has anything clipped, outside the screen or too small to tap', () =>
    onStage({ viewport, clock: CLOCK }, async (stage) => {
      await openSaid(stage, bigDay());
      const { page } = stage;
      const opens = [
        /Marek, Usher/,
        /Fireman, Orsolya/,
        /Wiktoria/,
        /Boom Jurrien/,
        /– .*Bride/,
        /^note 6 take/,
      ];
      for (const open of opens) {
        await page.getByRole('button', { name: open }).first().tap();
        const dialog = page.getByRole('dialog');
        await dialog.getByRole('button', { name: 'Close' }).waitFor();
        const earlier = dialog.getByRole('button', { name: 'earlier takes' });
        if (await earlier.isVisible()) await earlier.tap();
        expect(await layoutFaults(page), String(open)).toEqual({
          small: [],
          outside: [],
          clipped: [],
          thrownUnder: [],
        });
        await dialog.getByRole('button', { name: 'Close' }).tap();
        await dialog.waitFor({ state: 'detached' });
      }
    }));
});
