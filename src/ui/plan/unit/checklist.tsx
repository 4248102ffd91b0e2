import { useState } from 'preact/hooks';
import { CheckRow } from '../plan-moves.tsx';

interface ChecklistProps {
  readonly label: string;
  readonly items: readonly { readonly title: string; readonly under?: string }[];
  readonly isStale?: boolean;
}

/** Things to do in their order. Ticks are for whoever does them; all of them are applied as one. */
export function Checklist({ label, items, isStale = false }: ChecklistProps) {
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const tick = (title: string): void => {
    const next = new Set(ticked);
    if (!next.delete(title)) next.add(title);
    setTicked(next);
  };
  if (items.length === 0) return null;
  return (
    <ol class="rows" aria-label={label} aria-busy={isStale}>
      {items.map((item, at) => (
        <li key={item.title}>
          <CheckRow
            {...item}
            number={at + 1}
            isTicked={ticked.has(item.title)}
            isStale={isStale}
            onTick={() => tick(item.title)}
          />
        </li>
      ))}
    </ol>
  );
}
