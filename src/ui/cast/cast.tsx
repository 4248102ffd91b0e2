import { useState } from 'preact/hooks';
import { CastRoll, type CastTask } from './cast-roll.tsx';
import { NeedList } from './need-list.tsx';
import { OrderList } from './order-list.tsx';
import './cast.css';

/** The cast, who is needed in this setup, and who has priority. */
export function Cast() {
  const [task, setTask] = useState<CastTask | null>(null);
  const [last, setLast] = useState<CastTask | null>(null);
  const begin = (next: CastTask): void => {
    setTask(next);
    setLast(next);
  };
  const end = (): void => setTask(null);
  if (task === 'needed') return <NeedList onEnd={end} />;
  if (task === 'order') return <OrderList onEnd={end} />;
  return <CastRoll onTask={begin} cameFrom={last} />;
}
