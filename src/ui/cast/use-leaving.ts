import { useEffect, useRef } from 'preact/hooks';
import type { Command } from '../../app/day-store.ts';
import { useDay } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { undoOf } from '../frame/undo.ts';

/** Runs when the screen is left in any way, or the phone is put away: taps count even without Done. */
export function useLeaving(leave: () => void): void {
  const latest = useRef(leave);
  latest.current = leave;
  useEffect(() => {
    const hidden = (): void => {
      if (document.visibilityState === 'hidden') latest.current();
    };
    document.addEventListener('visibilitychange', hidden);
    return () => {
      document.removeEventListener('visibilitychange', hidden);
      latest.current();
    };
  }, []);
}

/** Runs what was tapped on such a screen. If nothing changed, that is no error: nobody asked for it. */
export function useRunOnLeaving(): (command: Command, done: string) => void {
  const store = useDay();
  return (command, done) => {
    const result = store.run(command);
    if (result.ok) tell(done, undoOf(store, result.value));
    else if (result.problem.code !== 'nothing-changed') complain(result.problem);
  };
}
