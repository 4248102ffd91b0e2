import type { Engine } from './engine.ts';
import { findElement } from './find-element.ts';
import { DriverError, elementPath, openDriverSession } from './web-driver.ts';
import { consoleFault, freePort, openWebKitHouse } from './webkit-processes.ts';

const NOT_PRESSED = new Set(['stale element reference', 'element click intercepted']);

/** WebKitGTK by its WebDriver. What such a session writes is in memory only, and gone when it ends. */
export async function openWebKit(): Promise<Engine> {
  const house = await openWebKitHouse();
  const faults: string[] = [];
  try {
    const port = await freePort();
    house.start(house.driver, [`--port=${port}`], {
      heard: (line) => faults.push(...consoleFault(line)),
    });
    const session = await openDriverSession(port, {
      'webkitgtk:browserOptions': {
        binary: house.browser,
        args: ['--automation', '--enable-write-console-messages-to-stdout=true'],
      },
    });
    const { browserName, browserVersion } = session.capabilities;
    await session.command('POST', '/window/rect', { width: 390, height: 844 });
    return {
      name: `${browserName} ${browserVersion}`,
      goTo: async (url) => void (await session.command('POST', '/url', { url })),
      reload: async () => void (await session.command('POST', '/refresh', {})),
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
      faults: () => faults,
      close: house.close,
    };
  } catch (error) {
    await house.close();
    throw error;
  }
}
