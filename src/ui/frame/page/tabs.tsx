import { useState } from 'preact/hooks';
import { afterNextPaint } from '../../kit/after-next-paint.ts';
import { type DayPage, goTo, hrefOf, TABS, type Tab, tabOf } from '../route.ts';

const NAMES: Record<Tab, string> = { now: 'Now', cast: 'Cast', rig: 'Rig', line: 'Line', wrap: 'Wrap' };

export function Tabs({ day, current }: { day: string; current: DayPage }) {
  // A screen takes some frames to draw; until then the mark confirms the tap.
  const [tapped, setTapped] = useState<Tab | null>(null);
  const marked = tapped ?? tabOf(current);
  return (
    <nav class="tabs" aria-label="Day">
      {TABS.map((tab) => (
        <a
          key={tab}
          href={hrefOf({ at: 'day', day, tab })}
          aria-current={tab === marked ? 'page' : undefined}
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
