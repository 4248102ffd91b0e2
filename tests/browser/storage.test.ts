import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';

const NOW = '2026-10-07T18:00:00Z';

const button = ({ page }: Stage, name: string | RegExp) => page.getByRole('button', { name }).first();

async function startDay(stage: Stage): Promise<void> {
  await button(stage, 'New day').tap();
  await stage.page.locator('input').first().fill('Harbour Lights');
  await button(stage, 'Start the day').tap();
  await stage.page.getByRole('heading', { name: 'Set up the rig' }).waitFor();
  await stage.page.getByRole('link', { name: 'Now', exact: true }).tap();
}

async function take(stage: Stage, minute: number): Promise<void> {
  await stage.setClock(`2026-10-07T18:${String(minute).padStart(2, '0')}:00Z`);
  await button(stage, /^Roll$/).tap();
  await stage.setClock(`2026-10-07T18:${String(minute).padStart(2, '0')}:30Z`);
  await button(stage, /^Cut$/).tap();
}

const takesOnTheLine = async (stage: Stage): Promise<string[]> => {
  await stage.page.getByRole('link', { name: 'Line', exact: true }).tap();
  await stage.page.locator('.line-row').first().waitFor();
  return stage.page.locator('.line-row strong').allTextContents();
};

describe('a phone that says no', () => {
  test('to a database at all: it is said in words, and the day goes on in memory', async () => {
    const refuse = (): void => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('no database here', 'SecurityError');
      };
    };
    await onStage({ clock: NOW, before: refuse }, async (stage) => {
      await startDay(stage);
      expect(await stage.page.locator('.banner').textContent()).toContain('this browser allows no storage');
      await take(stage, 1);
      expect(await takesOnTheLine(stage)).toContain('1/1 · 0:30');
      expect(await stage.page.locator('.head').textContent()).toContain('NOT KEPT');
    });
  });

  test('to one write after another: it is said in words, all is held, tried again, and nothing is lost', async () => {
    const failing = (): void => {
      const { transaction } = IDBDatabase.prototype;
      const state = { full: false };
      const abort = (made: IDBTransaction): void => {
        try {
          made.abort();
        } catch {
          // It was over already.
        }
      };
      Object.assign(window, { phone: state });
      IDBDatabase.prototype.transaction = function (
        this: IDBDatabase,
        ...args: Parameters<typeof transaction>
      ) {
        const made = transaction.apply(this, args);
        // As a full phone does: the whole transaction is taken back at its end, asked for or not.
        if (state.full && args[1] === 'readwrite') {
          made.commit = () => abort(made);
          setTimeout(() => abort(made));
        }
        return made;
      } as typeof transaction;
    };
    await onStage({ clock: NOW, before: failing }, async (stage) => {
      const { page } = stage;
      await startDay(stage);
      await stage.waitSaved();
      await page.evaluate(() => {
        (window as unknown as { phone: { full: boolean } }).phone.full = true;
      });
      await take(stage, 1);
      await page.locator('.banner').filter({ hasText: 'not saved' }).waitFor();
      expect(await page.locator('[data-saving]').getAttribute('data-saving')).toBe('not-saved');
      await take(stage, 3);
      await page.evaluate(() => {
        (window as unknown as { phone: { full: boolean } }).phone.full = false;
      });
      // It is tried again by itself, and by the button for whoever does not wait.
      await stage.waitSaved();
      await stage.reload();
      expect((await takesOnTheLine(stage)).filter((line) => /0:30/.test(line))).toEqual([
        '1/2 · 0:30',
        '1/1 · 0:30',
      ]);
    });
  });

  test('because its room is used up: that is named with what to do, and the action is kept once there is room', async () => {
    const filling = (): void => {
      const { add } = IDBObjectStore.prototype;
      const state = { full: false };
      Object.assign(window, { phone: state });
      IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...args: Parameters<typeof add>) {
        if (state.full) throw new DOMException('full', 'QuotaExceededError');
        return add.apply(this, args);
      };
    };
    await onStage({ clock: NOW, before: filling }, async (stage) => {
      const { page } = stage;
      const isFull = (full: boolean) =>
        page.evaluate((now) => {
          (window as unknown as { phone: { full: boolean } }).phone.full = now;
        }, full);
      await startDay(stage);
      await stage.waitSaved();
      await isFull(true);
      await take(stage, 1);
      await page.locator('.banner').filter({ hasText: 'the phone is full' }).waitFor();
      await isFull(false);
      await stage.waitSaved();
      await stage.reload();
      expect(await takesOnTheLine(stage)).toContain('1/1 · 0:30');
    });
  });

  test('because a newer version opened the database elsewhere: this window says that it must be loaded again', async () => {
    await onStage({ clock: NOW }, async (stage) => {
      await startDay(stage);
      await stage.waitSaved();
      const other = await stage.openWindow();
      await other.evaluate(
        () =>
          new Promise<void>((done, fail) => {
            const request = indexedDB.open('rollbook', 99);
            request.onsuccess = () => {
              request.result.close();
              done();
            };
            request.onerror = () => fail(request.error);
          }),
      );
      await stage.page.getByRole('alert').filter({ hasText: 'newer version' }).first().waitFor();
    });
  });
});
