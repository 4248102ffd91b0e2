import type { ChildProcess } from 'node:child_process';
import { type LastingEngine, until } from './engine.ts';
import { findElement } from './find-element.ts';
import { type Inspected, inspectWindow } from './inspector.ts';
import { consoleFault, freePort, openWebKitHouse } from './webkit-processes.ts';

/**
 * WebKitGTK in an ordinary window, which keeps its profile on the disk as a driven session does not. It is spoken to by
 * the protocol of its inspector: that runs scripts and cannot move a pointer, so buttons are pressed by `click()`.
 */
export async function openWebKitWindow(): Promise<LastingEngine> {
  const house = await openWebKitHouse();
  const faults: string[] = [];
  let browser: ChildProcess | undefined;
  let inspected: Inspected | undefined;

  const launch = async (): Promise<void> => {
    const port = await freePort();
    browser = house.start(
      house.browser,
      ['--enable-write-console-messages-to-stdout=true', '--geometry=390x844', 'about:blank'],
      {
        env: { WEBKIT_INSPECTOR_HTTP_SERVER: `127.0.0.1:${port}` },
        heard: (line) => faults.push(...consoleFault(line)),
      },
    );
    inspected = await inspectWindow(port);
  };
  const evaluate = (expression: string): Promise<unknown> => {
    if (!inspected) throw new Error('There is no window');
    return inspected.evaluate(expression);
  };
  const run = <T>(inPage: (given: string) => T, given = ''): Promise<T> =>
    evaluate(`(${inPage})(${JSON.stringify(given)})`) as Promise<T>;
  /** Leaves the page and waits until another one is there. */
  const leave = async (how: string): Promise<void> => {
    await evaluate(`window.isLeft = true; ${how}; 0`);
    await until('the next page', () =>
      evaluate('window.isLeft !== true && document.readyState === "complete"').then(
        Boolean,
        // While one page gives way to the next there may be nobody to answer.
        () => false,
      ),
    );
  };

  try {
    await launch();
    return {
      name: 'WebKitGTK in an ordinary window',
      goTo: (url) => leave(`location.href = ${JSON.stringify(url)}`),
      reload: () => leave('location.reload()'),
      run,
      press: async (role, pattern) =>
        Boolean(
          await evaluate(`{
            const found = (${findElement})(${JSON.stringify(role)}, ${JSON.stringify(pattern)});
            found?.focus();
            found?.click();
            found !== null;
          }`),
        ),
      type: async (text) => {
        await evaluate(`document.execCommand('insertText', false, ${JSON.stringify(text)})`);
      },
      faults: async () => faults,
      restart: async () => {
        inspected?.close();
        if (browser) await house.stop(browser);
        await launch();
      },
      close: async () => {
        inspected?.close();
        await house.close();
      },
    };
  } catch (error) {
    await house.close();
    throw error;
  }
}
