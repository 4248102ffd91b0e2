import { tickMove } from '../../app/commands/plan.ts';
import { type Tickable, ticksOf } from '../../day/phones/ticks.ts';
import { databaseOf } from '../../shared/ids.ts';
import { useDatabase, useDay } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { phoneName } from '../words/phones.ts';

interface Tick {
  readonly isTicked: boolean;
  readonly under: string;
  readonly onTick: () => void;
}

/** The tick of a move, on whichever phone, and who set it if it was another's; `about` stands beside that. */
export function useTick(): (move: Tickable, about: string) => Tick {
  const store = useDay();
  const day = store.day.value;
  const own = useDatabase();
  const tickOf = ticksOf(day);
  return (move, about) => {
    const tick = tickOf(move);
    const isOthers = tick !== undefined && databaseOf(tick) !== own;
    const by = isOthers ? `ticked by ${phoneName(day, databaseOf(tick), own)}` : '';
    return {
      isTicked: tick !== undefined,
      under: [about, by].filter((words) => words !== '').join(' · '),
      onTick() {
        // A tick is its own answer: no message says what the box shows.
        const done = store.run(tickMove(move, tick === undefined));
        if (!done.ok) complain(done.problem);
      },
    };
  };
}
