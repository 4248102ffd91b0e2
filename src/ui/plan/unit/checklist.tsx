import type { Tickable } from '../../../day/phones/ticks.ts';
import { CheckRow } from '../../kit/check-row.tsx';
import { useTick } from '../use-tick.ts';

interface ChecklistProps {
  readonly label: string;
  readonly items: readonly { readonly title: string; readonly under?: string; readonly move: Tickable }[];
  readonly isStale?: boolean;
}

/** Things to do in their order. Ticks are for whoever does them; all of them are applied as one. */
export function Checklist({ label, items, isStale = false }: ChecklistProps) {
  const tick = useTick();
  if (items.length === 0) return null;
  return (
    <ol class="rows" aria-label={label} aria-busy={isStale}>
      {items.map(({ title, under = '', move }, at) => (
        <li key={title}>
          <CheckRow title={title} number={at + 1} isStale={isStale} {...tick(move, under)} />
        </li>
      ))}
    </ol>
  );
}
