import type { Day } from '../../day/model.ts';
import type { Scene } from '../../day/scene.ts';
import type { Ahead } from '../../plan/ahead/look-ahead.ts';
import { Row } from '../kit/row.tsx';
import { countOf, nameOf, partName } from '../words/chain.ts';

interface AheadListProps {
  readonly day: Day;
  readonly ahead: Ahead;
  /** The scenes looked at, the next first. */
  readonly scenes: readonly Scene[];
}

/** What the plan comes to over the scenes to come, and whose pack stays where it is, and why. */
export function AheadList({ day, ahead, scenes }: AheadListProps) {
  return (
    <section aria-label="Scenes to come">
      <p class="section soft">{aheadWords(ahead)}</p>
      <ul class="rows">
        {ahead.kept.map(({ voice, transmitter, scene }) => (
          <li key={transmitter}>
            <Row
              title={`${nameOf(day, voice)} keeps ${partName(day.rig, transmitter)}`}
              under={`needed again in ${scenes[scene]?.number ?? 'a later scene'}`}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

export function aheadWords({ scenes, fits, bound }: Ahead): string {
  const over = scenes === 1 ? 'With the scene after it' : `With the ${scenes} scenes after it`;
  const proof = fits <= bound ? 'proven the fewest' : `${bound} at the least`;
  return `${over}: ${countOf(fits, 'pack')} to fit in all, ${proof}.`;
}
