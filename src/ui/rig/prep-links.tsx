import { stillOut } from '../../day/answers/listeners.ts';
import { hitCount } from '../../radio/day/named-hits.ts';
import { dueCount, upkeepAt } from '../../upkeep/due/day-due.ts';
import { useDay } from '../frame/context.ts';
import { useNow } from '../frame/prep/use-now.ts';
import { usePlan } from '../frame/prep/use-plan.ts';
import { hrefOf } from '../frame/route.ts';
import { countOf } from '../words/chain.ts';
import './prep-links.css';

/** Links from the rig to radio, upkeep and listeners, each with what is wrong or due there. */
export function PrepLinks() {
  const day = useDay().day.value;
  const now = useNow();
  const { plan, result } = usePlan();
  const { hits, edges } = result.ok ? hitCount(result.value) : { hits: 0, edges: 0 };
  const due = dueCount(upkeepAt(day, now.atMs));
  const out = stillOut(day).length;
  const onAir = plan.carriers.filter(({ transmitting }) => transmitting).length;
  return (
    <nav class="prep-links rows" aria-label="Prep and upkeep">
      <a class="row" href={hrefOf({ at: 'day', day: day.id, tab: 'radio' })}>
        <span class="row-text">
          <strong>Radio</strong>
          <span class="soft">frequencies and hits · {onAir} on the air</span>
        </span>
        <span class="row-word">
          {hits > 0 && <strong>{countOf(hits, 'hit')}</strong>}
          {edges > 0 && <strong>{edges} in spectrum in use</strong>}
          {!result.ok && <strong>cannot be worked out</strong>}
          {result.ok && hits + edges === 0 && onAir > 1 && 'no hit'}
        </span>
      </a>
      <a class="row" href={hrefOf({ at: 'day', day: day.id, tab: 'upkeep' })}>
        <span class="row-text">
          <strong>Upkeep</strong>
          <span class="soft">batteries, timecode, media, the far box, wiring sheet</span>
        </span>
        <span class="row-word">{due > 0 ? <strong>{due} due</strong> : 'nothing due'}</span>
      </a>
      <a class="row" href={hrefOf({ at: 'day', day: day.id, tab: 'listeners' })}>
        <span class="row-text">
          <strong>Listeners</strong>
          <span class="soft">who hears what, on which receiver</span>
        </span>
        <span class="row-word">{out > 0 ? `${out} handed out` : 'nobody'}</span>
      </a>
    </nav>
  );
}
