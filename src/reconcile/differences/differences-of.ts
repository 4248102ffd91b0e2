import type { Day } from '../../day/model.ts';
import { isKept, type Kept, keptDifferences } from '../../day/wrap/card-check.ts';
import type { DifferenceKey, SettlementChoice } from '../../day/wrap/card-settlement.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { cutText } from '../log-and-card/plain-key.ts';
import type { CardOfRecorder } from '../pairing/match-recorders.ts';
import type { CardMatch, Pair } from '../pairing/match-recordings.ts';
import { cardDifferences } from './card-differences.ts';
import { type Checking, checkingOf } from './checking.ts';
import {
  DEFAULT_TOLERANCE,
  type Difference,
  type DifferenceCode,
  type Found,
  SEVERITIES,
  SEVERITY_OF,
  type Tolerance,
} from './difference.ts';
import { rollingDifferences } from './rolling-differences.ts';
import { settingDifferences } from './setting-differences.ts';
import { takeDifferences } from './take-differences.ts';
import { timeDifferences } from './time-differences.ts';
import { trackDifferences } from './track-differences.ts';
import { placesByTime, unmatchedDifferences } from './unmatched.ts';

/**
 * All differences between log and card, in the order of the day, worst first within one place; those about
 * the whole day or card come first. `match` must be from this same day. Every difference can be resolved by
 * keeping the log, and most by taking the file's value.
 */
export function differencesOf(
  day: Day,
  match: CardMatch,
  tolerance: Tolerance = DEFAULT_TOLERANCE,
): Difference[] {
  const checking = checkingOf(day, match, tolerance);
  const found = [
    ...unmatchedDifferences(checking),
    ...rollingDifferences(checking),
    ...(match.cards.length > 0
      ? match.cards.flatMap((card) => ofCard(day, match, card, tolerance))
      : ofPairs(checking)),
  ];
  const placeOf = placesOf(checking);
  const kept = keptDifferences(day);
  return found
    .map((one) => ({ place: placeOf(one), difference: differenceFrom(one, kept) }))
    .sort((a, b) => a.place - b.place || rankOf(a.difference) - rankOf(b.difference))
    .map(({ difference }) => difference);
}

const ofPairs = (checking: Checking): Found[] => [
  ...takeDifferences(checking),
  ...timeDifferences(checking),
  ...trackDifferences(checking),
  ...settingDifferences(checking),
  ...cardDifferences(checking),
];

/** What the cards of one recorder say otherwise of the takes that are theirs, by its own clock and settings. */
function ofCard(day: Day, match: CardMatch, card: CardOfRecorder, tolerance: Tolerance): Found[] {
  const { recorder } = card;
  const isOwn = ({ recorder: of = match.cards[0]!.recorder }: Pair): boolean => of === recorder;
  const also = new Set(match.alsoThere);
  const own: CardMatch = {
    ...match,
    ...card,
    pairs: match.pairs.filter(isOwn),
    recordings: card.recordings.filter((one) => !also.has(one)),
  };
  return ofPairs(checkingOf(day, own, tolerance, recorder)).map((found) => ({
    ...found,
    recorder,
    // Two recorders may differ in the same way from the log.
    ...(!found.take &&
      recorder !== FIRST_RECORDER && { aspect: [recorder, found.aspect].filter(Boolean).join(' ') }),
  })) as Found[];
}

function differenceFrom(found: Found, kept: Kept): Difference {
  const { aspect, settlements = [], ...said } = found;
  const { code, take, track, recording } = said;
  const name = recording?.files[0]?.name;
  const sides = textOf([said.was, said.is]);
  const covers = coveredBy(found);
  const key: DifferenceKey = {
    code: aspect === undefined ? code : cutText(`${code} ${aspect}`, 200),
    ...(take && { take }),
    ...(name !== undefined && { file: cutText(name, 200) }),
    ...(track && { track }),
    values: covers === undefined ? sides : textOf([said.was, said.is, covers]),
  };
  const choices: SettlementChoice[] = [
    ...settlements,
    { kind: code === 'take-not-recorded' ? 'file-missing' : 'keep-log' },
  ];
  return {
    ...said,
    severity: SEVERITY_OF[code],
    key,
    settlements: choices.map((choice) => ({ ...choice, settles: key })),
    kept: isKept(kept, key, sides),
  };
}

/** What a difference speaks of besides its two values: once there is more of it, it is open again. */
function coveredBy(said: Found): unknown {
  if (!('detail' in said)) return undefined;
  if (said.code === 'recordings-of-another-day' || said.code === 'recordings-of-another-unit')
    return said.detail.count;
  if ('ms' in said.detail) return said.detail.ms;
  if ('others' in said.detail) return said.detail.others.join(' ');
  return 'takes' in said.detail && said.detail.takes.length > 1 ? said.detail.takes : undefined;
}

const LONGEST = 4000;

/**
 * Values as one text; a longer one ends in a sum of all of it. Figures are rounded: a drift is measured again
 * with every take.
 */
function textOf(values: readonly unknown[]): string {
  const text = JSON.stringify(values, (_, value) => (typeof value === 'number' ? Math.round(value) : value));
  return text.length <= LONGEST ? text : `${cutText(text, LONGEST - 20)} ${text.length} ${sumOf(text)}`;
}

/** FNV-1a, 32 bits. */
function sumOf(text: string): number {
  let sum = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return sum;
}

const ORDER = new Map(Object.keys(SEVERITY_OF).map((code, at) => [code as DifferenceCode, at]));

const rankOf = ({ code, severity }: Difference): number =>
  SEVERITIES.indexOf(severity) * 1000 + ORDER.get(code)!;

/**
 * Where a difference belongs on the line: at its take, just before the following take, or at the head of
 * the day.
 */
function placesOf(checking: Checking): (found: Found) => number {
  const { day, takes, pairs } = checking;
  const index = new Map(takes.map(({ id }, at) => [id, at]));
  const takeOf = new Map(pairs.map(({ recording, take }) => [recording, take.id]));
  const placeBefore = placesByTime(checking);
  return ({ take, recording }) => {
    const known = take ?? (recording && takeOf.get(recording));
    if (known !== undefined) return index.get(known) ?? day.takes.size;
    if (!recording) return -1;
    const before = placeBefore(recording);
    return before === null ? takes.length : index.get(before)! - 0.5;
  };
}
