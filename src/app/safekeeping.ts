import { type ReadonlySignal, signal } from '@preact/signals';

/** Whether the browser promised not to clear the app's data on its own. */
export type Promised = 'not-asked' | 'promised' | 'not-promised' | 'cannot-ask';

export interface StorageKeeper {
  persisted(): Promise<boolean>;
  persist(): Promise<boolean>;
}

export interface Safekeeping {
  readonly promised: ReadonlySignal<Promised>;
  /** Asks for the promise, once per phone and only if it is not given yet. Call it from a tap. */
  ask(): void;
}

const ASKED = 'rollbook-asked';

/**
 * Asks only once there is something to lose; some browsers then ask the user, others decide alone. `memory`
 * records that it asked, so the next start does not ask again.
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
