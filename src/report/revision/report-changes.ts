import type { PartId, TakeId } from '../../day/model.ts';
import type { ReportModel } from '../model.ts';
import { handOverText } from '../printed/hand-over-words.ts';
import { type PrintedLayout, unusedTracks, usedTracks } from '../printed/layout-words.ts';
import { matterText } from '../printed/matter-words.ts';
import { headLines, totalsLines } from '../printed/words.ts';
import { recordersText } from '../recorders-text.ts';
import { type Change, changesOf } from './change.ts';
import { takeChanges } from './take-changes.ts';

/**
 * The differences between two reports of one day, in page order. Without any, they print the same in every
 * format. Compares by id, since tracks, takes and voices may share names.
 */
export function reportChanges(was: ReportModel, is: ReportModel): Change[] {
  const changes = [
    ...pairChanges(headPairs(was), headPairs(is)),
    ...openChanges(was, is),
    ...layoutChanges(was, is),
    ...takeChanges(was, is),
    ...pairChanges(cardPairs(was), cardPairs(is)),
    ...handOverChanges(was, is),
  ];
  // Totals follow from the rest.
  return changes.length > 0 ? changes : pairChanges(totalsLines(was), totalsLines(is));
}

type Pairs = readonly (readonly [what: string, text: string])[];

function pairChanges(before: Pairs, after: Pairs): Change[] {
  const was = new Map(before);
  const is = new Map(after);
  const whats = [...new Set([...is.keys(), ...was.keys()])];
  return whats.flatMap((what) =>
    changesOf('head', { what, was: was.get(what) ?? '', is: is.get(what) ?? '' }),
  );
}

/** The label differs between one roll and several. */
const headPairs = ({ head }: ReportModel): Pairs =>
  headLines(head).map(([label, text]) => [label === 'Roll' ? 'Rolls' : label, text]);

const cardPairs = (model: ReportModel): Pairs => totalsLines(model).filter(([label]) => label === 'Card');

/** Two of one text may differ in the signature. */
function handOverChanges(was: ReportModel, is: ReportModel): Change[] {
  const keyed = ({ handOvers }: ReportModel) =>
    new Map(
      handOvers.map((line) => [JSON.stringify([handOverText(line), line.strokes]), handOverText(line)]),
    );
  const [before, after] = [keyed(was), keyed(is)];
  const what = 'Handed over';
  return [
    ...[...before]
      .filter(([key]) => !after.has(key))
      .flatMap(([, text]) => changesOf('head', { what, was: text, is: '' })),
    ...[...after]
      .filter(([key]) => !before.has(key))
      .flatMap(([, text]) => changesOf('head', { what, was: '', is: text })),
  ];
}

/** Two matters may have the same text: each counts. */
function openChanges(was: ReportModel, is: ReportModel): Change[] {
  const before = was.open.map(matterText);
  const after = is.open.map(matterText);
  const matter = { part: 'open', field: '', takes: [] } as const;
  return [
    ...without(before, after).map(
      (text): Change => ({ ...matter, kind: 'gone', what: 'Not open any more', was: text, is: '' }),
    ),
    ...without(after, before).map(
      (text): Change => ({ ...matter, kind: 'added', what: 'Not settled', was: '', is: text }),
    ),
  ];
}

/** The texts minus the others, each removing one occurrence. */
function without(texts: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return texts.filter((text) => {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

function layoutChanges(was: ReportModel, is: ReportModel): Change[] {
  const before = usedIn(was);
  const after = usedIn(is);
  const tracks = [...new Set([...after.keys(), ...before.keys()])];
  const unused = (model: ReportModel, used: ReadonlyMap<PartId, unknown>): string =>
    model.lists
      .flatMap(({ on, layout }) =>
        unusedTracks(layout.filter(({ track }) => !used.has(track))).map((number) => numberOn(on, number)),
      )
      .join(', ');
  return [
    ...orderChanges(was, is),
    ...tracks.flatMap((track) => trackChanges(before.get(track), after.get(track))),
    // A track used in only one of the two was listed above.
    ...changesOf('track', { what: 'Nobody on', was: unused(was, after), is: unused(is, before) }),
  ];
}

const usedIn = ({ lists }: ReportModel): Map<PartId, PrintedLayout> =>
  new Map(
    lists.flatMap(({ on, layout }) =>
      usedTracks(layout).map((track) => [track.track, { ...track, number: numberOn(on, track.number) }]),
    ),
  );

/** `'5'`, or `'5 of Bag'` where recorders have tracks of their own. */
const numberOn = (on: readonly string[], number: string): string =>
  on.length > 0 ? `${number} of ${recordersText(on)}` : number;

/** Only the lines that differ; the reader already has the others. */
function trackChanges(was: PrintedLayout | undefined, is: PrintedLayout | undefined): Change[] {
  const what = `Track ${(was ?? is)!.number}`;
  const text = (lines: readonly string[] = []): string => lines.join('; ');
  if (!was || !is) return changesOf('track', { what, was: text(was?.lines), is: text(is?.lines) });
  if (was.number !== is.number) {
    const called = ({ number, lines }: PrintedLayout): string => `${number}: ${text(lines)}`;
    return changesOf('track', { what, was: called(was), is: called(is) });
  }
  const old = without(was.lines, is.lines);
  const now = without(is.lines, was.lines);
  const count = old.length + now.length;
  const some =
    old.length > 0 && now.length > 0 ? what : `${count > 1 ? 'Lines' : 'A line'} of track ${was.number}`;
  return changesOf('track', { what: some, was: text(old), is: text(now) });
}

/** The order of the tracks that both have, in the layout and in every take with several of them. */
function orderChanges(was: ReportModel, is: ReportModel): Change[] {
  const order = (one: ReportModel, other: ReportModel) => {
    const known = new Set(other.layout.map(({ track }) => track));
    return one.layout.filter(({ track }) => known.has(track));
  };
  const before = order(was, is);
  const after = order(is, was);
  if (before.every(({ track }, at) => after[at]!.track === track)) return [];
  const numbers = (tracks: typeof before): string => tracks.map(({ number }) => number).join(', ');
  const takes = takesInOtherOrder(was, is);
  return changesOf('track', { what: 'Order of tracks', was: numbers(before), is: numbers(after) }).map(
    (change) => ({ ...change, takes }),
  );
}

function takesInOtherOrder(was: ReportModel, is: ReportModel): TakeId[] {
  const before = new Map(was.takes.map(({ takeId, tracks }) => [takeId, tracks.map(({ track }) => track)]));
  return is.takes.flatMap(({ takeId, tracks }) => {
    const old = before.get(takeId) ?? [];
    const now = tracks.map(({ track }) => track).filter((track) => old.includes(track));
    const then = old.filter((track) => now.includes(track));
    return now.every((track, at) => track === then[at]) ? [] : [takeId];
  });
}
