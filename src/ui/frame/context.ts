import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import type { Command, DayStore } from '../../app/day-store.ts';
import type { DayOutline } from '../../app/ports.ts';
import { fail, type Result } from '../../shared/result.ts';
import { complain, tell } from './messages.ts';

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

/** The open day. */
export function useDay(): DayStore {
  const day = useContext(DayContext);
  if (!day) throw new Error('No day around this screen');
  return day;
}

/** The open day as the list of days shows it, anew with every entry and every copy that leaves the phone. */
export function useOutline(): DayOutline {
  const { day, copy, outline } = useDay();
  void day.value;
  void copy.value;
  return outline();
}

/** The database that whatever is said on this phone is written under. */
export const useDatabase = (): string => useApp().parts.journal.state.database;

/** Runs a command, or several as one action, and says what came of it; true when it was done. */
export function useRun(): (command: Command | readonly Command[], done: string) => boolean {
  const store = useDay();
  return (command, done) => {
    const result = typeof command === 'function' ? store.run(command) : store.runTogether(command);
    if (result.ok) tell(done);
    else complain(result.problem);
    return result.ok;
  };
}
