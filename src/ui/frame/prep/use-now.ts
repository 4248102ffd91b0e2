import { useEffect, useState } from 'preact/hooks';
import type { Moment } from '../../../app/day-store.ts';
import { useDay } from '../context.ts';

const EVERY_MS = 15_000;

/** The current moment, renewed regularly, since what is due changes on its own. */
export function useNow(): Moment {
  const { clock } = useDay();
  const [now, setNow] = useState(() => clock.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(clock.now()), EVERY_MS);
    return () => clearInterval(timer);
  }, [clock]);
  return now;
}
