import type { TakeId } from '../day/model.ts';
import { setupLetters, setupOf } from '../day/slate.ts';
import { usedTracks } from './layout-words.ts';
import type { ReportModel } from './model.ts';
import { stayingInOrder } from './staying-in-order.ts';
import type { TakeLine } from './take-lines.ts';
import { headLines, matterText, noteText, statusWords, totalsLines, trackText } from './words.ts';

/** One thing that differs from the report sent last. */
export interface Change {
  readonly part: 'head' | 'track' | 'take' | 'open';
  readonly kind: 'added' | 'gone' | 'changed';
  /** `'Mixer'`, `'Track 5'`, `'24B/3'`, `'24B/1 to 26/3 (40 takes)'`. */
  readonly what: string;
  /** Of a take that changed: `'length'`, `'track 5'`. Empty otherwise. */
  readonly field: string;
  readonly was: string;
  readonly is: string;
  /** The takes it touches, for those who want to go there. */
  readonly takes: readonly TakeId[];
}

/** What makes a report a revision of one that went out before. */
export interface Revision {
  /** `'B'`, `'C'` and so on; I and O are left out, as on slates. */
  readonly letter: string;
  /** The letter of the report it is compared with. */
  readonly since: string;
  readonly changes: readonly Change[];
}

/** The letter of the first report that goes out. */
export const FIRST_LETTER = 'A';

/** `nextLetter('A')` is `'B'`, `nextLetter('H')` is `'J'`, `nextLetter('Z')` is `'AA'`. */
export const nextLetter = (letter: string): string => setupLetters((setupOf(letter) ?? 0) + 1);

/** The report as it is now, as a revision of the one sent last. */
export const revisionOf = (
  now: ReportModel,
  sent: { readonly letter: string; readonly model: ReportModel },
): Revision => ({
  letter: nextLetter(sent.letter),
  since: sent.letter,
  changes: reportChanges(sent.model, now),
});

/** What differs between two reports of one day, in the order of the pages. Reports that print the same differ in nothing. */
export const reportChanges = (was: ReportModel, is: ReportModel): Change[] => [
  ...headChanges(was, is),
  ...openChanges(was, is),
  ...layoutChanges(was, is),
  ...takesGone(was, is),
  ...takesAdded(was, is),
  ...takesMoved(was, is),
  ...takesChanged(was, is),
  ...cardChanges(was, is),
];

function cardChanges(was: ReportModel, is: ReportModel): Change[] {
  const words = (model: ReportModel): string =>
    totalsLines(model).find(([label]) => label === 'Card')?.[1] ?? '';
  if (words(was) === words(is)) return [];
  const kind = words(was) === '' ? 'added' : words(is) === '' ? 'gone' : 'changed';
  return [{ part: 'head', kind, what: 'Card', field: '', was: words(was), is: words(is), takes: [] }];
}

const headChanges = (was: ReportModel, is: ReportModel): Change[] =>
  // One roll and two have different labels.
  pairChanges(
    'head',
    headLines(was.head).map(([label, text]) => [label === 'Roll' ? 'Rolls' : label, text]),
    headLines(is.head).map(([label, text]) => [label === 'Roll' ? 'Rolls' : label, text]),
  );

function openChanges(was: ReportModel, is: ReportModel): Change[] {
  const before = was.open.map(matterText);
  const after = is.open.map(matterText);
  const matter = { part: 'open', field: '', takes: [] } as const;
  return [
    ...before
      .filter((text) => !after.includes(text))
      .map((text): Change => ({ ...matter, kind: 'gone', what: 'Not open any more', was: text, is: '' })),
    ...after
      .filter((text) => !before.includes(text))
      .map((text): Change => ({ ...matter, kind: 'added', what: 'Not settled', was: '', is: text })),
  ];
}

/** Only the lines of a track that differ; the others are the same for whoever has the report. */
function layoutChanges(was: ReportModel, is: ReportModel): Change[] {
  const before = new Map(layoutPairs(was));
  const after = new Map(layoutPairs(is));
  const without = (lines: readonly string[] = [], others: readonly string[] = []) =>
    lines.filter((line) => !others.includes(line)).join('; ');
  return pairChanges(
    'track',
    [...before].map(([what, lines]) => [what, without(lines, after.get(what))]),
    [...after].map(([what, lines]) => [what, without(lines, before.get(what))]),
  );
}

const layoutPairs = ({ layout }: ReportModel): (readonly [string, readonly string[]])[] =>
  usedTracks(layout).map(({ number, lines }) => [`Track ${number}`, lines]);

type Pairs = readonly (readonly [what: string, text: string])[];

function pairChanges(part: Change['part'], before: Pairs, after: Pairs): Change[] {
  const was = new Map(before);
  const is = new Map(after);
  const whats = [...new Set([...is.keys(), ...was.keys()])];
  return whats
    .map((what) => ({ what, was: was.get(what) ?? '', is: is.get(what) ?? '' }))
    .filter((pair) => pair.was !== pair.is)
    .map((pair) => ({ part, kind: kindOf(pair), field: '', takes: [], ...pair }));
}

const kindOf = ({ was, is }: { was: string; is: string }): Change['kind'] =>
  was === '' ? 'added' : is === '' ? 'gone' : 'changed';

const idsOf = ({ takes }: ReportModel): Set<TakeId> => new Set(takes.map(({ takeId }) => takeId));

function takesGone(was: ReportModel, is: ReportModel): Change[] {
  const still = idsOf(is);
  return was.takes
    .filter(({ takeId }) => !still.has(takeId))
    .map((take) => wholeTake('gone', take, takeSummary(take), ''));
}

function takesAdded(was: ReportModel, is: ReportModel): Change[] {
  const known = idsOf(was);
  return is.takes
    .filter(({ takeId }) => !known.has(takeId))
    .map((take) => wholeTake('added', take, '', takeSummary(take)));
}

const wholeTake = (kind: Change['kind'], take: TakeLine, was: string, is: string): Change => ({
  part: 'take',
  kind,
  what: take.text,
  field: '',
  was,
  is,
  takes: [take.takeId],
});

const takeSummary = (take: TakeLine): string =>
  [take.file, take.start, take.length, ...statusWords(take)].filter(Boolean).join(' ') || take.text;

/** Takes that stand elsewhere among those that both reports have. */
function takesMoved(was: ReportModel, is: ReportModel): Change[] {
  const known = idsOf(was);
  const still = idsOf(is);
  const before = was.takes.filter(({ takeId }) => still.has(takeId));
  const after = is.takes.filter(({ takeId }) => known.has(takeId));
  const rank = new Map(before.map(({ takeId }, at) => [takeId, at]));
  const stays = stayingInOrder(after.map(({ takeId }) => rank.get(takeId)!));
  const place = (list: readonly TakeLine[], at: number) => (at > 0 ? `after ${list[at - 1]!.text}` : 'first');
  return after.flatMap((take, at): Change[] =>
    stays.has(at)
      ? []
      : [
          {
            ...wholeTake('changed', take, place(before, rank.get(take.takeId)!), place(after, at)),
            field: 'place',
          },
        ],
  );
}

/** What a take says, field by field, in the words that are printed. */
function fieldsOf(take: TakeLine): Map<string, string> {
  const fields = new Map([
    ['slate and take', take.text],
    ['file', take.file],
    ['roll', take.roll],
    ['scene', take.scene],
    ['start', take.start],
    // Two lengths can round to one.
    ['length', take.lengthFrames === null ? '' : `${take.length} (${take.lengthFrames} frames)`],
    ['status', statusWords(take).join(', ')],
  ]);
  for (const line of take.tracks) fields.set(`track ${line.number}`, trackText(line));
  fields.set('notes', take.notes.map(noteText).join('; '));
  return fields;
}

function takesChanged(was: ReportModel, is: ReportModel): Change[] {
  const before = new Map(was.takes.map((take) => [take.takeId, take]));
  const found = new Map<string, { field: string; was: string; is: string; at: number[] }>();
  for (const [at, take] of is.takes.entries()) {
    const old = before.get(take.takeId);
    if (!old) continue;
    for (const change of fieldChanges(old, take)) {
      const key = JSON.stringify(change);
      const known = found.get(key);
      if (known) known.at.push(at);
      else found.set(key, { ...change, at: [at] });
    }
  }
  return [...found.values()].map(({ at, field, was: old, is: now }) => ({
    part: 'take',
    kind: 'changed',
    what: takesText(is.takes, at),
    field,
    was: old,
    is: now,
    takes: at.map((place) => is.takes[place]!.takeId),
  }));
}

function fieldChanges(old: TakeLine, take: TakeLine): { field: string; was: string; is: string }[] {
  const was = fieldsOf(old);
  const is = fieldsOf(take);
  return [...new Set([...is.keys(), ...was.keys()])]
    .map((field) => ({ field, was: was.get(field) ?? '', is: is.get(field) ?? '' }))
    .filter((pair) => pair.was !== pair.is);
}

/** One change that runs over many takes is one line. */
function takesText(takes: readonly TakeLine[], at: readonly number[]): string {
  const first = at[0]!;
  const last = at.at(-1)!;
  if (at.length > 3 && last - first === at.length - 1) {
    return `${takes[first]!.text} to ${takes[last]!.text} (${at.length} takes)`;
  }
  return at.map((place) => takes[place]!.text).join(', ');
}

/** `'24B/3: length was 1:52 (2800 frames), is 1:58 (2950 frames).'`, `'Mixer: was A, is B.'`, `'24B/4 added: …'` */
export function changeText({ part, kind, what, field, was, is }: Change): string {
  // A matter is a sentence of its own.
  if (part === 'open') return `${what}: ${was || is}`;
  if (kind === 'added') return `${what} added: ${is}.`;
  if (kind === 'gone') return `${what} gone: was ${was}.`;
  const lead = field ? `${what}: ${field}` : `${what}:`;
  return `${lead} was ${was || 'empty'}, is ${is || 'empty'}.`;
}

/** The sentences at the head of a revision. */
export const revisionLines = ({ changes }: Revision): string[] =>
  changes.length > 0 ? changes.map(changeText) : ['Nothing that is printed here.'];

/** `'Changed since revision A'`. */
export const revisionTitle = ({ since }: Revision): string => `Changed since revision ${since}`;
