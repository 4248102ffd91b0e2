import type { ComponentChildren } from 'preact';
import { MessagePlace } from '../../kit/live.tsx';
import { isReadOnly } from '../../kit/reads-only.ts';
import { useDay } from '../context.ts';
import type { DayPage } from '../route.ts';
import { Head } from './head.tsx';
import { SavingBanner } from './saving-banner.tsx';
import { Tabs } from './tabs.tsx';
import { Unsaved } from './unsaved.tsx';

interface PageProps {
  readonly tab: DayPage;
  /** What stays above the tabs, near the thumb. */
  readonly foot?: ComponentChildren;
  /** Nothing on it changes the day, so a phone that only reads has all of it. */
  readonly forReaders?: boolean;
  readonly children: ComponentChildren;
}

/** A tab of the open day: the head, the scrolling body, and the foot. */
export function Page({ tab, foot, forReaders = false, children }: PageProps) {
  const isClosed = isReadOnly.value && !forReaders;
  const { id } = useDay().day.value;
  return (
    <div class="page">
      <Head />
      <main class={isClosed ? 'body read-only' : 'body'} data-tab={tab} tabIndex={-1}>
        <SavingBanner />
        <Unsaved day={id} />
        {children}
      </main>
      <footer class="foot">
        <MessagePlace />
        {isClosed ? <p class="section soft">This phone reads the day and changes nothing.</p> : foot}
        <Tabs day={id} current={tab} />
      </footer>
    </div>
  );
}
