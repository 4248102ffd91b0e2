import type { Role } from './find-element.ts';

/** A browser engine with one window, as far as the main job needs one. Input is the engine's own, not made by scripts. */
export interface Engine {
  /** As the engine says it, with its version. */
  readonly name: string;
  readonly goTo: (url: string) => Promise<void>;
  readonly reload: () => Promise<void>;
  /** Runs a function in the page. It must stand alone, give plain data, and not wait. */
  readonly run: <T>(inPage: (given: string) => T, given?: string) => Promise<T>;
  /** Presses the element of that name, and says whether there was one that a finger would have hit. */
  readonly press: (role: Role, pattern: string) => Promise<boolean>;
  /** Types into what has the focus. */
  readonly type: (text: string) => Promise<void>;
  /** What the page put on the console as an error or a warning. */
  readonly faults: () => Promise<readonly string[]>;
  /** Ends every process that was started for it. */
  readonly close: () => Promise<void>;
}

/** An engine that keeps its profile on the disk. */
export interface LastingEngine extends Engine {
  /** Ends the browser and starts it again on the same profile. */
  readonly restart: () => Promise<void>;
}

const PATIENCE_MS = 20_000;

/** Asks again and again until the answer is a yes. */
export async function until(what: string, ask: () => Promise<boolean>): Promise<void> {
  const end = performance.now() + PATIENCE_MS;
  while (!(await ask())) {
    if (performance.now() > end) throw new Error(`Waited ${PATIENCE_MS / 1000} s in vain for ${what}`);
    await new Promise((next) => setTimeout(next, 40));
  }
}

/** Hands and eyes: what a mixer presses, types and reads, by the words on the screen. */
export function handsOn(engine: Engine) {
  const pressAs =
    (role: Role) =>
    (name: RegExp): Promise<void> =>
      until(`the ${role} ${name}`, () => engine.press(role, name.source));
  const textOf = (selector: string): Promise<string> =>
    engine.run(
      (wanted) =>
        // biome-ignore lint/performance/useDomNodeTextContent: words of two blocks must not run together
        [...document.querySelectorAll<HTMLElement>(wanted)].map(({ innerText }) => innerText).join('\n'),
      selector,
    );
  const reads = (selector: string, pattern: RegExp): Promise<void> =>
    until(`${selector} to read ${pattern}`, async () => pattern.test(await textOf(selector)));
  return {
    press: pressAs('button'),
    /** Goes to a tab of the open day. */
    tab: pressAs('link'),
    type: async (label: RegExp, text: string): Promise<void> => {
      await pressAs('field')(label);
      await engine.type(text);
    },
    textOf,
    reads,
    /** Waits for the words of the live region. */
    says: (pattern: RegExp): Promise<void> =>
      until(`the words ${pattern}`, async () =>
        (await engine.run(wordsSaid)).some((one) => pattern.test(one)),
      ),
    /** From here on no word of the live region is missed, however slow the machine: each stands for a moment only. */
    listen: (): Promise<void> => engine.run(keepWords),
    closed: (): Promise<void> =>
      until('the sheet to close', () => engine.run(() => document.querySelector('dialog') === null)),
    saved: (): Promise<void> =>
      until('all to be on the disk', () =>
        engine.run(() => document.querySelector('[data-unsaved="0"]') !== null),
      ),
    /** Waits until the worker has everything and is in charge of the page. */
    readyOffline: (): Promise<void> =>
      until('the worker', () => engine.run(() => navigator.serviceWorker.controller?.state === 'activated')),
  };
}

type Listening = typeof globalThis & { wordsSaid?: string[] };

/** It runs in the page, from its own source. */
function keepWords(): void {
  const kept: string[] = [];
  (globalThis as Listening).wordsSaid = kept;
  new MutationObserver(() => {
    for (const { textContent } of document.querySelectorAll('[role="status"]'))
      if (textContent && !kept.includes(textContent)) kept.push(textContent);
  }).observe(document, { subtree: true, childList: true, characterData: true });
}

const wordsSaid = (): string[] => (globalThis as Listening).wordsSaid ?? [];

export type Hands = ReturnType<typeof handsOn>;
