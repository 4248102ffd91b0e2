import { useState } from 'preact/hooks';
import { openTakes } from '../../../day/takes.ts';
import { afterNextPaint } from '../../kit/after-next-paint.ts';
import { useDay } from '../context.ts';
import { type DayPage, goTo, hrefOf, TABS, type Tab, tabOf } from '../route.ts';

const NAMES: Record<Tab, string> = { now: 'Now', cast: 'Cast', rig: 'Rig', line: 'Line', wrap: 'Wrap' };

export function Tabs({ day, current }: { day: string; current: DayPage }) {
  // A screen takes some frames to draw; until then the mark confirms the tap.
  const [tapped, setTapped] = useState<Tab | null>(null);
  const marked = tapped ?? tabOf(current);
  // Only Now has the dock: elsewhere its tab says that a take is open.
  const isRolling = marked !== 'now' && openTakes(useDay().day.value).length > 0;
  return (
    <nav class="tabs" aria-label="Day">
      {TABS.map((tab) => (
        <a
          key={tab}
          href={hrefOf({ at: 'day', day, tab })}
          aria-current={tab === marked ? 'page' : undefined}
          aria-label={tab === 'now' && isRolling ? `${NAMES.now}, a take is rolling` : undefined}
          class={tab === 'now' && isRolling ? 'tab-rolling' : undefined}
          onClick={(event) => {
            // With these keys the browser opens it beside this page.
            if (event.ctrlKey || event.metaKey || event.shiftKey) return;
            event.preventDefault();
            setTapped(tab);
            afterNextPaint(() => goTo({ at: 'day', day, tab }));
          }}
        >
          {NAMES[tab]}
        </a>
      ))}
    </nav>
  );
}
