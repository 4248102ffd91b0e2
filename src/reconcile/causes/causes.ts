import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import type { Difference, DifferenceCode, DifferenceValue } from '../differences/difference.ts';

/** What a cause is about, in order of weight. */
export const CAUSE_KINDS = ['sound', 'people', 'rates', 'numbers', 'names', 'notes'] as const;
export type CauseKind = (typeof CAUSE_KINDS)[number];

/** One tap for all differences of a cause that can be settled so. */
export interface Way {
  readonly kind: CardSettlement['kind'];
  readonly settlements: readonly CardSettlement[];
}

/** Differences that have one cause: one line, settled together or one by one. */
export interface Cause {
  readonly key: string;
  readonly kind: CauseKind;
  readonly code: DifferenceCode;
  /** In the order of the day. */
  readonly differences: readonly [Difference, ...Difference[]];
  /** The takes it is about. */
  readonly takes: number;
  /** For several differences; a single one has its own. */
  readonly ways: readonly Way[];
}

/**
 * Every kind of difference in the order in which its causes are listed: sound without a take and takes
 * without sound, wrong people on tracks, rates, numbers, names, and what is only noted.
 */
const KIND_OF: Readonly<Record<DifferenceCode, CauseKind>> = {
  'take-not-recorded': 'sound',
  'recording-not-logged': 'sound',
  'match-unsure': 'sound',
  'mos-recorded': 'sound',
  'file-damaged': 'sound',
  'file-set-incomplete': 'sound',
  'track-not-recorded': 'sound',
  'parts-gap': 'sound',
  'recordings-gap': 'sound',
  'tracks-swapped': 'people',
  'track-name-differs': 'people',
  'sample-rate-differs': 'rates',
  'timecode-rate-differs': 'rates',
  pulldown: 'rates',
  'bit-depth-differs': 'rates',
  'file-layout-differs': 'rates',
  'clock-apart': 'rates',
  'clock-drifts': 'rates',
  'slate-differs': 'numbers',
  'take-number-differs': 'numbers',
  'roll-differs': 'numbers',
  'rolling-differs': 'numbers',
  'start-differs': 'numbers',
  'length-differs': 'numbers',
  'start-not-logged': 'numbers',
  'length-not-logged': 'numbers',
  'recordings-overlap': 'numbers',
  'parts-overlap': 'numbers',
  'file-name-differs': 'names',
  'file-names-differ': 'names',
  'take-type-differs': 'notes',
  'circled-differs': 'notes',
  'note-not-logged': 'notes',
  'field-never-changes': 'notes',
  'pre-record-undeclared': 'notes',
  'take-on-backup-only': 'notes',
  'recordings-of-another-day': 'notes',
  'recordings-of-another-unit': 'notes',
  'files-disagree': 'notes',
  'file-twice': 'notes',
  'file-warning': 'notes',
};

const ORDER = new Map((Object.keys(KIND_OF) as DifferenceCode[]).map((code, at) => [code, at]));

/** Differences by cause, the worst first. `['circled-differs', ...]` of 28 takes are one. */
export function causesOf(differences: readonly Difference[]): Cause[] {
  const groups = new Map<string, [Difference, ...Difference[]]>();
  for (const one of differences) {
    const key = JSON.stringify([one.code, one.recorder, ...sharedBy(one)]);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups]
    .map(([key, group]) => causeOf(key, group))
    .sort((a, b) => ORDER.get(a.code)! - ORDER.get(b.code)!);
}

/** What differences of one code have in common if they have one cause. */
function sharedBy(one: Difference): readonly DifferenceValue[] {
  switch (one.code) {
    // The same person under another name, wherever they were; one slate for another.
    case 'track-name-differs':
    case 'slate-differs':
    case 'roll-differs':
      return [one.was, one.is];
    case 'tracks-swapped':
      return [one.detail.number, ...one.detail.others];
    case 'track-not-recorded':
      return [one.detail.number];
    // Counted on by one more after a take that nobody logged.
    case 'take-number-differs':
      return [one.is - one.was];
    case 'rolling-differs':
    case 'circled-differs':
    case 'take-type-differs':
    case 'file-damaged':
    case 'file-warning':
    case 'sample-rate-differs':
    case 'bit-depth-differs':
    case 'timecode-rate-differs':
    case 'file-layout-differs':
      return [one.is];
    case 'files-disagree':
      return [one.was];
    case 'field-never-changes':
      return [one.detail.field];
    default:
      return [];
  }
}

function causeOf(key: string, differences: readonly [Difference, ...Difference[]]): Cause {
  const [{ code }] = differences;
  return {
    key,
    kind: KIND_OF[code],
    code,
    differences,
    takes: new Set(differences.flatMap(takesOf)).size,
    ways: differences.length > 1 ? waysOf(differences) : [],
  };
}

const takesOf = (one: Difference): readonly string[] =>
  'detail' in one && 'takes' in one.detail ? one.detail.takes : one.take ? [one.take] : [];

/** Which file it is, and what became of a take without one, has to be said of each. */
const ONE_BY_ONE: ReadonlySet<DifferenceCode> = new Set([
  'match-unsure',
  'take-not-recorded',
  'mos-recorded',
]);

/** What settles most of them, then leaving all as logged. */
function waysOf(differences: readonly [Difference, ...Difference[]]): Way[] {
  const kindsOf = ({ code, settlements }: Difference) =>
    ONE_BY_ONE.has(code) ? [] : settlements.slice(0, -1);
  const kinds = new Set(differences.flatMap((one) => kindsOf(one).map(({ kind }) => kind)));
  const last = differences.flatMap(({ settlements }) => settlements.at(-1) ?? []);
  return [
    ...[...kinds].flatMap((kind) => {
      const settlements = differences.flatMap((one) => kindsOf(one).find((way) => way.kind === kind) ?? []);
      return settlements.length * 2 > differences.length ? [{ kind, settlements }] : [];
    }),
    { kind: last[0]!.kind, settlements: last },
  ];
}
