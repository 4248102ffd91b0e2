import type { Day, PartId, TakeId } from '../../day/model.ts';
import { rollingAtTake } from '../../day/recorders/rolling.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { type Logged, loggedTakes } from '../log-and-card/logged.ts';
import { isOfAnotherDay } from '../log-and-card/other-day.ts';
import { cardsApart } from './cards-apart.ts';
import { type CardOfRecorder, type Cards, ownersOf, type SaidOwners, together } from './match-recorders.ts';
import { matchUnit, type UnitMatch } from './match-unit.ts';
import { recordersOfOneName } from './one-name.ts';
import { type RolledOtherwise, rolledOtherwise } from './rolling-on-cards.ts';

export type { Choice, Pair, Question } from './match-unit.ts';

/** All cards of a day against its log. The fields of the unit are those of the recorder that has most takes. */
export interface CardMatch extends UnitMatch {
  /** Recordings of another recorder that match no take: another unit's. Set aside. */
  readonly ofOtherUnits: readonly Recording[];
  /** Recordings dated another day, where others are dated right. Set aside. */
  readonly ofOtherDays: readonly Recording[];
  /** Takes that are only on recorders of which no card was read. */
  readonly onBackupOnly: readonly TakeId[];
  /** What each recorder's cards have by themselves; none on a day with one recorder. */
  readonly cards: readonly CardOfRecorder[];
  /** The cards that were read, and whose they are; nobody's if they fit no recorder. */
  readonly owned: readonly (Cards & { readonly owner: PartId | null })[];
  /** Where the cards say otherwise which recorders rolled. */
  readonly rolledOtherwise: readonly RolledOtherwise[];
}

/** Fewer files are no card of their own. */
const LEAST_FILES = 3;
/** A recorder with fewer of its files matched was on another unit. */
const LEAST_SHARE = 0.5;

/**
 * Matches the recordings of each recorder, and those dated another day, by themselves: they have clocks and
 * habits of their own. The recorder with most takes is the one of the log. What another one has of takes
 * already matched is also there; what nobody else has completes the log's; one that has hardly any take is
 * set aside.
 */
export function matchRecordings(day: Day, found: readonly Recording[], said: SaidOwners = {}): CardMatch {
  const takes = loggedTakes(day);
  if (day.rig.recorders.length > 0) return matchSeveral(day, takes, found, said);
  const units = unitsOf(day, found).flatMap((unit) => recordersOf(unit, takes.length));
  const matches = units.map((unit) => ({ unit, match: matchUnit(day, takes, unit.recordings) }));
  const first = mainOf(matches);
  const others = matches
    .filter((one) => one !== first)
    .toSorted((a, b) => takesIn(b.match) - takesIn(a.match));
  const whole: CardMatch = {
    ...(first?.match ?? matchUnit(day, takes, [])),
    ofOtherUnits: [],
    ofOtherDays: [],
    ...NOT_SEVERAL,
  };
  return others.reduce(
    (sum, { unit, match }) => withUnit(sum, match, unit.isOtherDay && first?.unit.isOtherDay === false),
    whole,
  );
}

const NOT_SEVERAL = { onBackupOnly: [], cards: [], owned: [], rolledOtherwise: [] };

/**
 * The cards of each recorder by themselves, with the names, rolls, tracks and clock that the log has of it. What
 * fits none of them is matched last, as what is left on a day with one recorder.
 */
function matchSeveral(
  day: Day,
  takes: readonly Logged[],
  found: readonly Recording[],
  said: SaidOwners,
): CardMatch {
  const all = cardsApart(day, found, takes.length);
  const { cards, owners, others } = ownersOf(
    day,
    all.filter(({ isOtherDay }) => !isOtherDay),
    said,
  );
  const owned = all.map((one) => ({ ...one, owner: owners.get(one.key) ?? null }));
  const whole = cards[0] ?? matchUnit(day, takes, []);
  const joined = together(day, takes, cards);
  const sounding = takes.filter(({ take }) => take.kind !== 'mos').map(({ take }) => take.id);
  const match: CardMatch = {
    ...whole,
    ...joined,
    recordings: cards.flatMap((card) => card.recordings).filter((one) => !joined.alsoThere.includes(one)),
    ofOtherUnits: [],
    ofOtherDays: [],
    ...{ cards, owned, onBackupOnly: [], rolledOtherwise: rolledOtherwise(day, sounding, cards) },
  };
  const strange = all.filter(({ isOtherDay }) => isOtherDay);
  const rest = [...others.map((one) => ({ ...one, isOtherDay: false })), ...strange];
  return withoutUnread(
    day,
    rest.reduce(
      (sum, { recordings, isOtherDay }) =>
        withUnit(sum, matchUnit(day, takes, recordings), isOtherDay && cards.length > 0),
      match,
    ),
  );
}

/** Of recorders that have nearly as many takes, the one whose clock the log follows. */
function mainOf<One extends { readonly match: UnitMatch }>(matches: readonly One[]): One | undefined {
  const most = Math.max(0, ...matches.map(({ match }) => takesIn(match)));
  const like = matches.filter(({ match }) => takesIn(match) >= NEARLY_AS_MANY * most);
  return like.toSorted(
    (a, b) => clockOff(a.match) - clockOff(b.match) || takesIn(b.match) - takesIn(a.match),
  )[0];
}

const NEARLY_AS_MANY = 0.8;

const clockOff = ({ toRecorder }: UnitMatch): number => Math.abs(toRecorder(0));

const takesIn = ({ pairs, questions }: UnitMatch): number => pairs.length + questions.length;

interface Unit {
  readonly recordings: Recording[];
  readonly isOtherDay: boolean;
}

/** By the originator in the files and by their date; a few stray files stay with the most. */
function unitsOf(day: Day, found: readonly Recording[]): Unit[] {
  const units = new Map<string, Unit>();
  for (const recording of found) {
    const isOtherDay = isOfAnotherDay(day, recording);
    const key = JSON.stringify([recording.files[0]!.bext?.originator.trim() ?? '', isOtherDay]);
    const unit = units.get(key) ?? { recordings: [], isOtherDay };
    units.set(key, unit);
    unit.recordings.push(recording);
  }
  const [most, ...others] = [...units.values()].sort((a, b) => b.recordings.length - a.recordings.length);
  if (!most) return [];
  const strays = others.filter(({ recordings }) => recordings.length < LEAST_FILES);
  most.recordings.push(...strays.flatMap(({ recordings }) => recordings));
  return [most, ...others.filter((unit) => !strays.includes(unit))];
}

/** What is only on recorders whose cards are not here is not missing from those that are. */
function withoutUnread(day: Day, all: CardMatch): CardMatch {
  const read = new Set(all.cards.map(({ recorder }) => recorder));
  const isRead = (take: TakeId): boolean =>
    read.size === 0 || rollingAtTake(day, take).some(({ id }) => read.has(id));
  return {
    ...all,
    takesWithout: all.takesWithout.filter(isRead),
    onBackupOnly: all.takesWithout.filter((take) => !isRead(take)),
  };
}

/** A card with no more recordings than takes is one recorder's. */
const recordersOf = ({ recordings, isOtherDay }: Unit, takes: number): Unit[] =>
  recordings.length > takes
    ? recordersOfOneName(recordings).map((of) => ({ recordings: of, isOtherDay }))
    : [{ recordings, isOtherDay }];

function withUnit(all: CardMatch, unit: UnitMatch, isOtherDay: boolean): CardMatch {
  const ofUnit = [...unit.recordings, ...unit.alsoThere];
  if (isOtherDay) return { ...all, ofOtherDays: [...all.ofOtherDays, ...ofUnit] };
  if (takesIn(unit) < LEAST_SHARE * ofUnit.length)
    return { ...all, ofOtherUnits: [...all.ofOtherUnits, ...ofUnit] };
  const missing = new Set(all.takesWithout);
  const isMissing = ({ take }: { readonly take: string }): boolean => missing.has(take);
  const pairs = unit.pairs.filter(isMissing);
  const questions = unit.questions.filter(isMissing);
  const completed = new Set([...pairs, ...questions].map(({ take }) => take));
  const mos = unit.recordedMos.filter(({ take }) => !all.recordedMos.some((one) => one.take === take));
  const used = new Set([
    ...[...pairs, ...mos].map(({ recording }) => recording),
    ...questions.flatMap(({ choices }) => choices.flatMap(({ recording }) => recording ?? [])),
    ...unit.recordingsWithout,
  ]);
  return {
    ...all,
    recordings: [...all.recordings, ...ofUnit.filter((one) => used.has(one))],
    alsoThere: [...all.alsoThere, ...ofUnit.filter((one) => !used.has(one))],
    pairs: [...all.pairs, ...pairs].toSorted((a, b) => all.order.get(a.take)! - all.order.get(b.take)!),
    questions: [...all.questions, ...questions],
    takesWithout: all.takesWithout.filter((take) => !completed.has(take)),
    recordingsWithout: [...all.recordingsWithout, ...unit.recordingsWithout],
    recordedMos: [...all.recordedMos, ...mos],
  };
}
