import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { onStage, openStage, type Stage } from './harness.ts';

describe('the harness', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage({ clock: '2026-03-02T08:00:00.000Z', timezone: 'Asia/Kolkata', worker: true });
    await stage.waitOfflineReady();
  });
  afterAll(() => stage.close());

  test('sees an error the page throws', async () => {
    await stage.page.evaluate(() => {
      setTimeout(() => {
        throw new Error('thrown on purpose');
      });
    });
    await expect.poll(() => stage.forgive(/error: .*thrown on purpose/)).toHaveLength(1);
  });

  test('sees a rejection nobody handles', async () => {
    await stage.page.evaluate(() => {
      void Promise.reject(new Error('rejected on purpose'));
    });
    await expect.poll(() => stage.forgive(/rejected on purpose/)).toHaveLength(1);
  });

  test('sees an error on the console', async () => {
    await stage.page.evaluate(() => console.error('said on purpose'));
    await expect.poll(() => stage.forgive(/console error: said on purpose/)).toHaveLength(1);
  });

  test('sees that the page may not run inline script or style', async () => {
    const ran = await stage.page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'globalThis.ranInline = true';
      const style = document.createElement('style');
      style.textContent = 'body { outline: 1px solid }';
      document.head.append(script, style);
      return 'ranInline' in globalThis;
    });
    expect(ran).toBe(false);
    await expect.poll(() => stage.forgive(/Content Security Policy/).length).toBe(2);
  });

  test('sees a request to another host, from the page and from a worker that no policy holds', async () => {
    await stage.page.evaluate(() => fetch('http://other.example/page').catch(() => undefined));
    await expect.poll(() => stage.forgive(/Content Security Policy/).length).toBeGreaterThan(0);
    const worker = stage.context.serviceWorkers()[0]!;
    await worker.evaluate(() =>
      fetch('http://other.example/worker').then(
        () => undefined,
        () => undefined,
      ),
    );
    await expect
      .poll(() => stage.forgive(/foreign request: .*other\.example\/worker/).length)
      .toBeGreaterThan(0);
    stage.forgive(/other\.example/);
  });

  test('sees a socket that a worker opens to another host, which the driver itself does not see', async () => {
    const worker = stage.context.serviceWorkers()[0]!;
    await worker.evaluate(
      () =>
        new Promise((done) => {
          const socket = new WebSocket('ws://other.example/socket');
          socket.onclose = done;
          socket.onerror = done;
        }),
    );
    await expect.poll(() => stage.forgive(/foreign request: .*other\.example/).length).toBeGreaterThan(0);
    stage.forgive(/other\.example/);
  });

  test('sees a request to another port of this machine', async () => {
    const other = createServer((_, response) => response.end()).listen(0, '127.0.0.1');
    await new Promise((done) => other.once('listening', done));
    const url = `http://127.0.0.1:${(other.address() as AddressInfo).port}/`;
    const worker = stage.context.serviceWorkers()[0]!;
    await worker.evaluate(
      (to) =>
        fetch(to, { mode: 'no-cors' }).then(
          () => undefined,
          () => undefined,
        ),
      url,
    );
    await expect.poll(() => stage.forgive(/foreign request: http:\/\/127/).length).toBeGreaterThan(0);
    other.close();
  });

  test('holds the clock of the page still, and moves it when told', async () => {
    const read = () => stage.page.evaluate(() => new Date().toISOString());
    expect(await read()).toBe('2026-03-02T08:00:00.000Z');
    await stage.setClock('2026-03-02T23:59:59.000Z');
    expect(await read()).toBe('2026-03-02T23:59:59.000Z');
    await stage.reload();
    expect(await read()).toBe('2026-03-02T23:59:59.000Z');
    expect(await stage.page.evaluate(() => new Date().getTimezoneOffset())).toBe(-330);
  });

  test('takes the server away for good, and brings it back at the same address', async () => {
    await stage.killServer();
    await expect(fetch(stage.origin)).rejects.toThrow();
    await stage.startServer();
    expect((await fetch(stage.origin)).status).toBe(200);
  });
});

describe('stages that share a browser', () => {
  test('see each only what went wrong on their own', async () => {
    const ask = async (stage: Stage, host: string): Promise<void> => {
      await stage.waitOfflineReady();
      await stage.context.serviceWorkers()[0]!.evaluate(
        (to) =>
          fetch(to).then(
            () => undefined,
            () => undefined,
          ),
        `http://${host}/`,
      );
    };
    await onStage({ worker: true }, async (one) => {
      await onStage({ colorScheme: 'light', worker: true }, async (two) => {
        expect(one.context.browser()).toBe(two.context.browser());
        await ask(one, 'one.example');
        await ask(two, 'two.example');
        for (const [stage, own] of [
          [one, 'one.example'],
          [two, 'two.example'],
        ] as const) {
          // The driver and the trap.
          await expect.poll(() => stage.faults.length).toBe(2);
          expect(stage.forgive(new RegExp(own))).toHaveLength(2);
        }
      });
    });
  });

  test('find nothing that another kept, at the same address', async () => {
    await onStage({}, async (one) => {
      await one.page.evaluate(() => localStorage.setItem('kept', 'by one'));
      // The page goes on asking for its later parts until it is closed.
      await onStage({ forgives: /foreign request/ }, async (two) => {
        await two.page.goto(one.origin);
        expect(await two.page.evaluate(() => localStorage.getItem('kept'))).toBeNull();
      });
    });
  });

  test('end with the faults that nobody forgave, and leave the browser to the next', async () => {
    const faulty = onStage({}, async ({ page }) => {
      await page.evaluate(() => console.error('left on purpose'));
    });
    await expect(faulty).rejects.toThrow('left on purpose');
    await onStage({}, async (stage) => expect(stage.faults).toEqual([]));
  });

  test('cannot end it, nor take its files', async () => {
    await onStage({}, async (stage) => {
      const needsOwn = 'open it with `ownBrowser: true`';
      await expect(stage.relaunch()).rejects.toThrow(needsOwn);
      await expect(stage.crash()).rejects.toThrow(needsOwn);
      expect(stage.freeze).toThrow(needsOwn);
      expect(stage.loseDatabase).toThrow(needsOwn);
      expect(await stage.page.locator('#app > *').count()).toBeGreaterThan(0);
    });
  });
});
