import type { ComponentChildren } from 'preact';
import { backAgain, type WayBack } from '../../../app/commands/recorders.ts';
import { key } from '../../../day/chain/links.ts';
import type { Day, Fact, Lead } from '../../../day/model.ts';
import { tickable } from '../../../day/phones/ticks.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { Page } from '../../frame/page/page.tsx';
import { goTo } from '../../frame/route.ts';
import { Button } from '../../kit/button.tsx';
import { countOf } from '../../words/chain.ts';
import { factWords, sourceName } from '../../words/facts.ts';
import { nameWithRecorder } from '../../words/recorder-names.ts';
import { Checklist } from './checklist.tsx';

interface BackProps {
  readonly top: ComponentChildren;
  readonly back: WayBack;
  /** The recorders that rolled there. */
  readonly to: string;
}

/** A move back; of a lead that is pulled, where from. */
function backWords(day: Day, move: WayBack['moves'][number]): string {
  const lead = move.kind === 'leads-plugged' && move.leads.length === 1 ? move.leads[0] : undefined;
  if (!lead || lead.to !== null) return factWords(day, move as Fact);
  const { from, to } = (day.tail.get(key.lead(lead.lead))?.value ?? lead) as Lead;
  return `unplug ${sourceName(day, from ?? '')}${to ? ` from ${nameWithRecorder(day, to)}` : ''}`;
}

/** What stood before the unit moved, less what has changed since. */
export function BackAgain({ top, back, to }: BackProps) {
  const day = useDay().day.value;
  const run = useRun();
  const count = back.moves.length;
  const apply = (): void => {
    if (run(backAgain(), `Back again on ${to}`)) goTo({ at: 'day', day: day.id, tab: 'now' });
  };
  return (
    <Page
      tab="unit"
      foot={
        <div class="plan-foot unit-foot">
          <Button look="solid" onClick={apply}>
            {count > 0 ? `Apply ${countOf(count, 'move')}` : 'Apply'}
          </Button>
        </div>
      }
    >
      {top}
      <p class="section">
        {to} rolling from now on.{' '}
        <span class="soft">
          {count > 0
            ? 'As it was before the unit moved, but for what has been changed since.'
            : 'Nothing else to move.'}
        </span>
      </p>
      <Checklist
        label="Moves back, in their order"
        items={back.moves.map((move) => ({ title: backWords(day, move), move: tickable(move) }))}
      />
    </Page>
  );
}
