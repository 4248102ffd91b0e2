import type { How } from '../cells/how-found.ts';
import { cellsAt } from '../cells/sheet-cells.ts';
import { isStrip, readStrip } from './cast-strip.ts';
import type { SceneColumns } from './scene-columns.ts';
import {
  dayNightWithin,
  intExtIn,
  intExtWithin,
  isDayNight,
  pagesIn,
  pagesWithin,
  sceneNumberIn,
} from './scene-shapes.ts';
import { addCell, addPeople, emptyScene, type SceneCell, type SceneDraft } from './sheet-scene.ts';

/** The cells of a row with what each holds. */
function cellsOf(text: string, columns: SceneColumns): { cell: SceneCell; value: string; how: How }[] {
  return cellsAt(text, columns.delimiter).flatMap((value, at) => {
    const cell = columns.cells[at];
    return cell && value !== '' && !/^[-–—]+$/.test(value) ? [{ cell, value, how: columns.how[at]! }] : [];
  });
}

/** A scene from a row under named or known columns; null if the row has no scene number or nothing beside it. */
export function readSceneRow(text: string, columns: SceneColumns, line: number): SceneDraft | null {
  const cells = cellsOf(text, columns);
  const said = cells.find(({ cell }) => cell === 'number');
  const number = said ? sceneNumberIn(said.value) : '';
  if (!said || number === '' || number.length > 20 || cells.length < 2) return null;
  const width = cellsAt(text, columns.delimiter).length;
  // Cells set apart by spaces move up where one is empty.
  const isMoved = columns.delimiter === 'spaces' && width !== columns.cells.length;
  if (isMoved || width > columns.cells.length || isOfOtherTable(cells)) return null;
  const scene = emptyScene(line);
  addCell(scene, 'number', number, said.how);
  fill(scene, cells);
  return scene;
}

const SHAPES: Readonly<Partial<Record<SceneCell, (value: string) => boolean>>> = {
  intExt: (value) => intExtWithin(value) !== null || intExtIn(value) !== '',
  dayNight: isDayNight,
  pages: (value) => pagesIn(value) !== '',
};

/** A row of another table below, without a heading of its own: nothing in it looks as its column should. */
function isOfOtherTable(cells: readonly { cell: SceneCell; value: string }[]): boolean {
  const told = cells.filter(({ cell }) => SHAPES[cell]);
  return told.length > 0 && told.every(({ cell, value }) => !SHAPES[cell]!(value));
}

/** The second line of a row: cells under the columns, without a scene number. False if it is none. */
export function addSceneRow(scene: SceneDraft, text: string, columns: SceneColumns, line: number): boolean {
  const cells = cellsOf(text, columns);
  const all = cellsAt(text, columns.delimiter);
  if (cells.length === 0 || cells.some(({ cell }) => cell === 'number')) return false;
  if (all.length < 2 || all.length > columns.cells.length) return false;
  if (columns.delimiter === 'spaces') return false;
  scene.lines.push(line);
  fill(scene, cells);
  return true;
}

function fill(scene: SceneDraft, cells: readonly { cell: SceneCell; value: string; how: How }[]): void {
  for (const { cell, value, how } of cells) {
    if (cell === 'number') continue;
    if (cell === 'cast') addStrip(scene, value, how);
    else if (cell === 'set') addSet(scene, value, how);
    else if (cell === 'intExt') addInOrOut(scene, value, how);
    else if (cell === 'pages')
      addCell(scene, 'pages', pagesIn(value) || value, pagesIn(value) ? how : 'guessed');
    else if (cell === 'dayNight') addCell(scene, cell, value, isDayNight(value) ? how : 'guessed');
    else addCell(scene, cell, value, how);
  }
}

export function addStrip(scene: SceneDraft, value: string, how: How): void {
  const strip = readStrip(value);
  addPeople(scene, strip.cast, strip.clear ? how : 'guessed');
  addCell(scene, 'crowd', strip.crowd, how);
}

/** `'INT. KITCHEN - DAY'` in one cell is all three. */
export function addSet(scene: SceneDraft, value: string, how: How): void {
  const inOut = intExtWithin(value);
  const isFirst = inOut !== null && inOut.at === 0;
  if (isFirst) addCell(scene, 'intExt', inOut.intExt, 'shape');
  const rest = isFirst ? inOut.rest : value;
  const split = isFirst || /\s[-–—]\s/.test(rest) ? dayNightWithin(rest) : null;
  if (!split || split.before === '') {
    addCell(scene, 'set', trimmed(rest), how);
    return;
  }
  addCell(scene, 'set', trimmed(split.before), how);
  addCell(scene, 'dayNight', split.dayNight, 'shape');
  if (/\p{L}/u.test(split.after)) addCell(scene, 'synopsis', trimmed(split.after), 'shape');
}

/** A column may hold both: `'INT / DAY'`, `'I/D'`. */
function addInOrOut(scene: SceneDraft, value: string, how: How): void {
  const only = intExtIn(value);
  if (only) {
    addCell(scene, 'intExt', only, how);
    return;
  }
  const letters = /^([iea])\s?[/-]?\s?([dntj]\d{0,2})$/i.exec(value);
  const both = letters ? null : intExtWithin(value);
  addCell(
    scene,
    'intExt',
    letters ? intExtIn(letters[1]!) : (both?.intExt ?? value),
    both || letters ? how : 'guessed',
  );
  const rest = letters ? letters[2]! : trimmed(both?.rest ?? '');
  if (rest !== '') addCell(scene, 'dayNight', rest, isDayNight(rest) ? how : 'guessed');
}

const trimmed = (text: string): string =>
  text.replace(/^[\s.,:/–—-]+|[\s,:/–—-]+$/g, '').replace(/\s+/g, ' ');

/**
 * Adds what follows the set in running text: pages, cast and story, in any order. `bare`: a heading says that
 * a count of pages comes before the cast, so a first number alone is one.
 */
export function addTail(scene: SceneDraft, tail: string, bare: boolean): void {
  const counted = pagesWithin(tail);
  // '2 4/8' alone can be somebody, too: 2, on four eighths.
  const isAlone = counted !== null && /^\d+ \d/.test(counted.pages) && counted.before + counted.after === '';
  if (counted) addCell(scene, 'pages', counted.pages, isAlone ? 'guessed' : 'shape');
  const pieces = (counted ? [counted.before, counted.after] : [tail]).map(trimmed).filter(Boolean);
  for (const piece of pieces) {
    const first = !counted && bare ? /^(\d{1,2})\s+(?=[\d\p{L}])/u.exec(piece) : null;
    if (first) addCell(scene, 'pages', first[1]!, 'guessed');
    addPiece(scene, first ? piece.slice(first[0].length) : piece, !counted && !first);
  }
}

/** People at the end of a text: `'Ines hides 1, 2, 5'`; or in front of it. */
const PEOPLE_AT_END =
  /^(.*\p{L}[^\d,]*?)[\s–-]+((?:\d{1,4}[a-z]?(?:\s?[-–]\s?\d{1,4})?)(?:[,\s+&]+\d{1,4}[a-z]?(?:\s?[-–]\s?\d{1,4})?)*)$/iu;

function addPiece(scene: SceneDraft, piece: string, isUnsure: boolean): void {
  if (isStrip(piece)) {
    const isCount = isUnsure && !piece.includes(',');
    addStrip(scene, piece, isCount ? 'guessed' : 'shape');
    return;
  }
  const people = /\d[\d,\s–&+-]*$/.test(piece) ? PEOPLE_AT_END.exec(piece) : null;
  if (people) {
    addStrip(scene, people[2]!, 'guessed');
    addCell(scene, 'synopsis', trimmed(people[1]!), 'shape');
  } else addCell(scene, 'synopsis', piece, 'shape');
}
