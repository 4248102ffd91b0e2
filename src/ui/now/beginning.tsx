import { answersNow } from '../../day/answers/answers.ts';
import { useDay } from '../frame/context.ts';
import { hrefOf } from '../frame/route.ts';
import { countOf } from '../words/chain.ts';
import { useConflictButton } from './summary-line.tsx';

/** A day without tracks: where to begin. */
export function NoRig({ onConflicts }: { onConflicts: () => void }) {
  const day = useDay().day.value;
  return (
    <div class="section empty">
      {useConflictButton(onConflicts)}
      <p>
        <strong>No rig yet.</strong> Set up the recorder, and this screen shows who is on which track.
      </p>
      <a class="button button-solid as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'rig' })}>
        Set up the rig
      </a>
    </div>
  );
}

/** Before the first take: who still has to be entered, or needs a pack. Not asked again after Roll. */
export function NextStep() {
  const day = useDay().day.value;
  const performers = answersNow(day).voices.filter(({ voice }) => voice.kind === 'performer');
  const bare = performers.filter(({ paths }) =>
    paths.every(({ broken }) => broken === 'no-transmitter' || broken === 'pack-gone'),
  ).length;
  if (performers.length > 0 && bare === 0) return null;
  return (
    <div class="section empty">
      <p>
        <strong>{bare === 0 ? 'No performers yet.' : `${countOf(bare, 'performer')} without a pack.`}</strong>{' '}
        {bare === 0 && 'Add the cast; then a'}
        {bare > 0 && 'On Cast, a'} tap on a name gives them a pack.
      </p>
      <a class="button button-solid as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'cast' })}>
        {bare === 0 ? 'Add the cast' : 'Give packs'}
      </a>
    </div>
  );
}
