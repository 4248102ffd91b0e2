import { cutTake } from '../../app/commands/takes.ts';
import type { Take } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { useApp, useRun } from './context.ts';

/** Cuts a take and says so; true when it was done. */
export function useCut(): (take: Take) => boolean {
  const run = useRun();
  const { safekeeping } = useApp();
  return (take) => {
    const done = run(cutTake(take.id), `${takeText(take)} cut`);
    // A first take is something to lose, and browsers want such a request to come from a tap.
    if (done) safekeeping.ask();
    return done;
  };
}
