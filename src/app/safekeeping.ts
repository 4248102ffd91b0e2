import { type ReadonlySignal, signal } from '@preact/signals';

/** Whether the browser promised not to clear the app's data by itself. */
export type Promised = 'not-asked' | 'promised' | 'not-promised' | 'cannot-ask';

/** The browser's storage, where it can be asked for such a promise. */
export interface StorageKeeper {
  persisted(): Promise<boolean>;
  persist(): Promise<boolean>;
}

export interface Safekeeping {
  readonly promised: ReadonlySignal<Promised>;
  /** Asks for the promise: once on this phone, and only where it is not given yet. Call it from a tap. */
  ask(): void;
}

const ASKED = 'rollbook-asked';

/**
 * Nobody is asked before there is something to lose; some browsers then ask the user, others decide alone. That it was
 * asked is noted in `memory`, so that nobody is asked again at the next start.
 */
export function safekeeping(
  keeper: StorageKeeper | undefined,
  memory?: Pick<Storage, 'getItem' | 'setItem'>,
): Safekeeping {
  let asked = Boolean(memory?.getItem(ASKED));
  const promised = signal<Promised>(!keeper ? 'cannot-ask' : asked ? 'not-promised' : 'not-asked');
  const answer = (yes: boolean): void => {
    promised.value = yes ? 'promised' : 'not-promised';
  };
  keeper?.persisted().then(
    (already) => already && answer(true),
    () => {},
  );
  return {
    promised,
    ask() {
      if (!keeper || asked || promised.peek() === 'promised') return;
      asked = true;
      memory?.setItem(ASKED, 'yes');
      keeper.persist().then(answer, () => answer(false));
    },
  };
}
