import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import { rateNow } from '../../day/settings/settings.ts';
import { pairDrift } from '../../upkeep/due/pair-drift.ts';
import { hearingSentence } from '../words/hearing.ts';
import { signedWords } from './compare-words.ts';
import type { HeardPair } from './heard-boxes.ts';
import { clockOf } from './words.ts';

interface PairsTableProps {
  readonly day: Day;
  readonly pairs: readonly HeardPair[];
  readonly nameOf: (id: string) => string;
  readonly now: Moment;
}

/** Every pair of boxes that were heard: how far apart, how they drift, and when a frame is reached. */
export function PairsTable({ pairs, ...props }: PairsTableProps) {
  if (pairs.length === 0) return null;
  return (
    <div class="section">
      <table class="pairs-table">
        <caption>The second of each pair, ahead (+) or behind (−)</caption>
        <thead>
          <tr>
            <th scope="col">Frames</th>
            <th scope="col">ms</th>
            <th scope="col">Drift, ppm</th>
            <th scope="col">Re-jam by</th>
          </tr>
        </thead>
        {pairs.map((pair) => (
          <tbody key={pair.ids.join(' ')}>
            <PairRows pair={pair} {...props} />
          </tbody>
        ))}
      </table>
    </div>
  );
}

function PairRows({
  pair: { ids, apart },
  day,
  nameOf,
  now,
}: Omit<PairsTableProps, 'pairs'> & { pair: HeardPair }) {
  const [one, other] = ids.map(nameOf);
  const name = (
    <tr>
      <th scope="rowgroup" colSpan={4}>
        {one}, {other}
      </th>
    </tr>
  );
  if (!apart.ok) {
    return (
      <>
        {name}
        <tr>
          <td colSpan={4}>{hearingSentence(apart.problem)}</td>
        </tr>
      </>
    );
  }
  const { frames, doubtFrames, ms, doubtMs } = apart.value;
  const rate = rateNow(day);
  const drift = rate ? pairDrift(day, ids, { atMs: now.atMs, offMs: ms }, rate) : undefined;
  return (
    <>
      {name}
      <tr>
        <td>{signedWords(frames, doubtFrames, 2)}</td>
        <td>{signedWords(ms, doubtMs, 1)}</td>
        {drift ? (
          <>
            <td>{signedWords(drift.ppm, drift.doubtPpm, 1)}</td>
            <td>
              {drift.dueAtMs === undefined ? 'no drift seen' : clockOf(drift.dueAtMs, now.zone, now.atMs)}
            </td>
          </>
        ) : (
          <td colSpan={2}>compare again in an hour</td>
        )}
      </tr>
    </>
  );
}
