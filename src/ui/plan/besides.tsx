import type { Day } from '../../day/model.ts';
import type { Beside } from '../../plan/day/plan-facts.ts';
import { listOf } from '../words/chain.ts';
import { besideWords } from './words.ts';

/** What plans do besides their moves. */
export function Besides({ day, besides }: { day: Day; besides: readonly Beside[] }) {
  if (besides.length === 0) return null;
  return <p class="section">Also: {listOf(besides.map((beside) => besideWords(day, beside)))}.</p>;
}
