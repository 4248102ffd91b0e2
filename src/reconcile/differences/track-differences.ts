import type { PartId, TakeId } from '../../day/model.ts';
import { cutText } from '../log-and-card/plain-key.ts';
import type { CheckedPair, Checking } from './checking.ts';
import type { Found } from './difference.ts';
import { changesSaidLate } from './late-changes.ts';
import { checkTracks, type TrackCheck } from './track-names.ts';

/** A track that differs in the same way over several takes in a row. */
interface Run {
  readonly first: CheckedPair;
  readonly check: TrackCheck;
  readonly takes: TakeId[];
  readonly key: string;
}

/** Track names in the files against the chain; a run of takes with one difference is reported once. */
export function trackDifferences(checking: Checking): Found[] {
  const open = new Map<PartId, Run>();
  const runs: Run[] = [];
  for (const pair of checking.pairs) {
    const checks = checkTracks(checking.day, pair.answers, pair.recording);
    for (const check of checks ?? []) {
      const { track, verdict, answer, file } = check;
      const key = verdict === 'same' ? '' : JSON.stringify([verdict, answer.name, file?.name]);
      const run = open.get(track.id);
      if (run?.key === key) run.takes.push(pair.take.id);
      else if (verdict === 'same') open.delete(track.id);
      else {
        const begun = { first: pair, check, takes: [pair.take.id], key };
        open.set(track.id, begun);
        runs.push(begun);
      }
    }
  }
  return runs.map((run) => foundIn(checking, run));
}

function foundIn({ day, nextTake }: Checking, { first, check, takes }: Run): Found {
  const { take, recording } = first;
  const { track, number, answer, file, verdict } = check;
  const said = {
    take: take.id,
    track: track.id,
    recording,
    was: answer.name,
    detail: { number, takes, typed: answer.typed },
  };
  if (verdict === 'not-recorded') return { code: 'track-not-recorded', ...said, is: null };
  const name = file?.name?.trim() ?? '';
  const late = changesSaidLate(day, take.id, track.id, recording);
  const naming = {
    kind: 'name-track' as const,
    track: track.id,
    name: cutText(name, 200),
    take: take.id,
    until: nextTake(takes.at(-1)!),
  };
  return {
    code: 'track-name-differs',
    ...said,
    is: name,
    settlements: [
      ...(late ? [{ kind: 'move-changes' as const, changes: late, before: take.id }] : []),
      naming,
    ],
  };
}
