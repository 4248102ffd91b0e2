import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import type { Command, DayStore } from '../../app/day-store.ts';
import type { DayOutline } from '../../app/ports.ts';
import { fail, type Result } from '../../shared/result.ts';
import { complain, tell } from './messages.ts';
import { undoOf } from './undo.ts';

export const AppContext = createContext<AppStore | null>(null);
export const RestartContext = createContext<() => Promise<Result<unknown>>>(async () =>
  fail({ code: 'restart-refused', because: 'no-update' }),
);
export const DayContext = createContext<DayStore | null>(null);

export function useApp(): AppStore {
  const app = useContext(AppContext);
  if (!app) throw new Error('No app around this screen');
  return app;
}

export function useDay(): DayStore {
  const day = useContext(DayContext);
  if (!day) throw new Error('No day around this screen');
  return day;
}

/** The open day as the list of days shows it, updated with every entry and every export. */
export function useOutline(): DayOutline {
  const { day, copy, outline } = useDay();
  void day.value;
  void copy.value;
  return outline();
}

/** The database under whose name this phone's facts are written. */
export const useDatabase = (): string => useApp().parts.journal.state.database;

/** Runs a command, or several as one action, and reports the result, with Undo; true if it was done. */
export function useRun(): (command: Command | readonly Command[], done: string) => boolean {
  const store = useDay();
  return (command, done) => {
    const result = typeof command === 'function' ? store.run(command) : store.runTogether(command);
    if (result.ok) tell(done, undoOf(store, result.value));
    else complain(result.problem);
    return result.ok;
  };
}
