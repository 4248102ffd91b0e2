import { type DayPage, hrefOf, TABS, type Tab, tabOf } from '../route.ts';

const NAMES: Record<Tab, string> = { now: 'Now', cast: 'Cast', rig: 'Rig', line: 'Line', wrap: 'Wrap' };

export function Tabs({ day, current }: { day: string; current: DayPage }) {
  return (
    <nav class="tabs" aria-label="Day">
      {TABS.map((tab) => (
        <a
          key={tab}
          href={hrefOf({ at: 'day', day, tab })}
          aria-current={tab === tabOf(current) ? 'page' : undefined}
        >
          {NAMES[tab]}
        </a>
      ))}
    </nav>
  );
}
