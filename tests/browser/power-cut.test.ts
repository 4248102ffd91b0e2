import { expect, test } from 'vitest';
import { createCutDisk, whyNoCutDisk } from './cut-disk.ts';
import { LONG, noteFault, notPossible, seededNumbers } from './faults-table.ts';
import { onStage } from './harness.ts';
import { hearSaved, tapAsFastAsYouCan } from './rapid-taps.ts';
import { foldStored, openDayId, storedFacts } from './stored-facts.ts';
import { startDay } from './tapping.ts';

const SEED = 20_261_008;
const CUTS = LONG ? 12 : 1;
const FAULT = 'power cut while takes are logged';

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** One power cut after so long; gives what the screen had called saved, and what the disk has of it. */
async function cutPower(afterMs: number): Promise<{ called: number; lost: number }> {
  const disk = createCutDisk();
  try {
    let called = 0;
    let lost = 0;
    // The browser does not write its list of service workers through, and says so whenever it finds that a cut took it:
    // the app is then fetched anew, which is no loss of what was said.
    await onStage({ profileIn: disk.path, forgives: /Failed to access storage/ }, async (stage) => {
      await startDay(stage.page);
      await stage.waitSaved();
      const day = openDayId(stage.page);
      const heard = hearSaved(stage.page);
      const tapping = tapAsFastAsYouCan(stage.page, 60_000).catch(() => undefined);
      await wait(afterMs);
      // Right after a word that all is saved: nothing had time to reach the disk by itself.
      await new Promise<void>((done) => {
        heard.onNext = () => {
          heard.onNext = () => {};
          stage.freeze();
          done();
        };
      });
      disk.notePowerCut();
      const { rolls, cuts } = heard;
      await stage.crash();
      await tapping;
      disk.startAfterCut();
      await stage.relaunch();
      const { takes } = foldStored(day, await storedFacts(stage.page, day));
      const ended = [...takes.values()].filter(({ cutAt }) => cutAt !== undefined).length;
      called = rolls + cuts;
      lost = Math.max(0, rolls - takes.size) + Math.max(0, cuts - ended);
    });
    return { called, lost };
  } finally {
    disk.remove();
  }
}

test(
  `${CUTS} power cuts while takes are logged: nothing that was called saved is lost, or it is said why it cannot be tried (seed ${SEED})`,
  async () => {
    const why = whyNoCutDisk();
    if (why !== undefined) {
      notPossible(FAULT, why);
      console.log(`Power cut not possible here: ${why}`);
      expect(why).not.toBe('');
      return;
    }
    const random = seededNumbers(SEED);
    let called = 0;
    let lost = 0;
    for (let cut = 0; cut < CUTS; cut += 1) {
      const one = await cutPower(300 + random() * 2500);
      called += one.called;
      lost += one.lost;
    }
    console.log(`${CUTS} power cuts, ${called} facts called saved, ${lost} lost`);
    noteFault(FAULT, `${CUTS} cuts, ${called} facts called saved`, lost);
    expect(called).toBeGreaterThan(0);
    expect(lost).toBe(0);
  },
  LONG ? 3_600_000 : 240_000,
);
