import { cutTake } from '../../app/commands/takes.ts';
import type { Take } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { useApp, useRun } from './context.ts';

/** Cuts a take and announces it; true if it was done. */
export function useCut(): (take: Take) => boolean {
  const run = useRun();
  const { safekeeping } = useApp();
  return (take) => {
    const done = run(cutTake(take.id), `${takeText(take)} cut`);
    // After a first take there is something to lose, and browsers want this request to come from a tap.
    if (done) safekeeping.ask();
    return done;
  };
}
