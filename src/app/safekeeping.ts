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
  /** Asks for the promise: the first time only, and only where it is not given yet. Call it from a tap. */
  ask(): void;
}

/** Nobody is asked before there is something to lose; some browsers then ask the user, others decide alone. */
export function safekeeping(keeper: StorageKeeper | undefined): Safekeeping {
  const promised = signal<Promised>(keeper ? 'not-asked' : 'cannot-ask');
  let asked = false;
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
      keeper.persist().then(answer, () => answer(false));
    },
  };
}
