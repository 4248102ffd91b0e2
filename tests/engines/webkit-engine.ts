import type { Engine } from './engine.ts';
import { findElement } from './find-element.ts';
import { DriverError, elementPath, openDriverSession } from './web-driver.ts';
import { freePort, openWebKitHouse } from './webkit-processes.ts';

const NOT_PRESSED = new Set(['stale element reference', 'element click intercepted']);

type Witness = typeof globalThis & { faultsKept?: string[] };

/**
 * From here on the page keeps what it puts on the console: a driven session prints nothing. What went wrong before the
 * page had loaded is heard in the ordinary window only. It runs in the page, from its own source.
 */
function keepFaults(): void {
  const kept: string[] = [];
  (globalThis as Witness).faultsKept = kept;
  for (const level of ['error', 'warn'] as const) {
    const say = console[level];
    console[level] = (...given: unknown[]) => {
      kept.push(`${level}: ${given.join(' ')}`);
      say.apply(console, given);
    };
  }
  addEventListener('error', ({ message }) => kept.push(`page error: ${message}`));
  addEventListener('unhandledrejection', ({ reason }) => kept.push(`page error: ${reason}`));
}

const faultsKept = (): string[] => (globalThis as Witness).faultsKept?.splice(0) ?? [];

/** WebKitGTK by its WebDriver. What such a session writes is in memory only, and gone when it ends. */
export async function openWebKit(): Promise<Engine> {
  const house = await openWebKitHouse();
  const faults: string[] = [];
  try {
    const port = await freePort();
    house.start(house.driver, [`--port=${port}`]);
    const session = await openDriverSession(port, {
      'webkitgtk:browserOptions': { binary: house.browser, args: ['--automation'] },
    });
    const takeFaults = async (): Promise<readonly string[]> => {
      faults.push(...((await session.run(faultsKept)) as string[]));
      return faults;
    };
    const { browserName, browserVersion } = session.capabilities;
    await session.command('POST', '/window/rect', { width: 390, height: 844 });
    return {
      name: `${browserName} ${browserVersion}`,
      goTo: async (url) => {
        await session.command('POST', '/url', { url });
        await session.run(keepFaults);
      },
      reload: async () => {
        await takeFaults();
        await session.command('POST', '/refresh', {});
        await session.run(keepFaults);
      },
      run: <T>(inPage: (given: string) => T, given = '') => session.run(inPage, given) as Promise<T>,
      press: async (role, pattern) => {
        const path = elementPath(await session.run(findElement, role, pattern));
        if (!path) return false;
        return session.command('POST', `${path}/click`, {}).then(
          () => true,
          (error: unknown) => {
            // It was drawn anew, or something came over it, since it was found; nothing was pressed.
            if (error instanceof DriverError && NOT_PRESSED.has(error.code)) return false;
            throw error;
          },
        );
      },
      type: async (text) => {
        const path = elementPath(await session.command('GET', '/element/active'));
        if (!path) throw new Error('Nothing has the focus');
        await session.command('POST', `${path}/value`, { text });
      },
      faults: takeFaults,
      close: house.close,
    };
  } catch (error) {
    await house.close();
    throw error;
  }
}
