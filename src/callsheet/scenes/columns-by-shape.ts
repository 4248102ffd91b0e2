import type { How } from '../cells/how-found.ts';
import type { Delimiter } from '../cells/sheet-cells.ts';
import { isUpper, wordsOf } from '../cells/sheet-names.ts';
import { isLongStrip, isStrip, readStrip } from './cast-strip.ts';
import type { SceneColumns } from './scene-columns.ts';
import { intExtIn, intExtWithin, isDayNight, isEighths, pagesIn, sceneNumberIn } from './scene-shapes.ts';
import type { SceneCell } from './sheet-scene.ts';

/** Whether the cells of a row, in whatever order, are those of a scene. */
export function isSceneRow(cells: readonly string[]): boolean {
  const filled = cells.filter(Boolean);
  if (filled.length < 3 || !filled.some((cell) => sceneNumberIn(cell) !== '')) return false;
  const says = (test: (cell: string) => boolean): boolean => filled.some(test);
  const isSet = (cell: string): boolean => intExtWithin(cell)?.at === 0 && !/^(?:i|e|a)$/i.test(cell);
  return says(isSet) || (says(isDayNight) && says(isEighths));
}

/** One column of the rows of scenes. */
class Column {
  readonly at: number;
  readonly cells: readonly string[];

  constructor(rows: readonly (readonly string[])[], at: number) {
    this.at = at;
    this.cells = rows.map((cells) => cells[at] ?? '').filter(Boolean);
  }

  /** The share of its filled cells that pass. */
  share(test: (cell: string) => boolean): number {
    return this.cells.length === 0 ? 0 : this.cells.filter(test).length / this.cells.length;
  }

  get different(): number {
    return new Set(this.cells).size / Math.max(1, this.cells.length);
  }
}

const isPages = (cell: string): boolean => pagesIn(cell) !== '';
const isPeople = (cell: string): boolean => isStrip(cell) || readStrip(cell).cast.length === 0;

/** The columns of a table without a heading, from what its rows of scenes look like. Null if there are none. */
export function columnsByShape(
  rows: readonly (readonly string[])[],
  delimiter: Delimiter,
): SceneColumns | null {
  const scenes = rows.filter(isSceneRow);
  if (scenes.length === 0) return null;
  const width = Math.max(...scenes.map(({ length }) => length));
  const left = Array.from({ length: width }, (_value, at) => new Column(scenes, at));
  const cells: (SceneCell | null)[] = left.map(() => null);
  const how: How[] = left.map(() => 'shape');
  const give = (cell: SceneCell, column: Column | undefined, found: How = 'shape'): void => {
    if (!column) return;
    cells[column.at] = cell;
    how[column.at] = found;
    left.splice(left.indexOf(column), 1);
  };
  const best = (of: (column: Column) => number, least: number): Column | undefined =>
    left.filter((column) => of(column) >= least).sort((a, b) => of(b) - of(a) || a.at - b.at)[0];

  give(
    'intExt',
    best((column) => column.share((cell) => intExtIn(cell) !== ''), 0.7),
  );
  give(
    'dayNight',
    best((column) => column.share(isDayNight), 0.7),
  );
  give(
    'set',
    best((column) => column.share((cell) => intExtWithin(cell)?.at === 0), 0.5),
  );
  const eighths = best((column) => (column.share(isPages) >= 0.8 ? column.share(isEighths) : 0), 0.2);
  give('pages', eighths);
  give(
    'cast',
    best((column) => (column.share(isPeople) >= 0.8 ? column.share(isLongStrip) : 0), 0.1),
  );
  // Scene numbers hardly ever repeat; what is left of bare numbers are people or a count of pages.
  const numbers = left.filter((column) => column.share((cell) => sceneNumberIn(cell) !== '') >= 0.7);
  const number = [...numbers].sort((a, b) => b.different - a.different || a.at - b.at)[0];
  if (!number) return null;
  const rival = numbers.find((one) => one !== number && one.different === number.different);
  give('number', number, rival ? 'guessed' : 'shape');
  if (!cells.includes('cast'))
    give(
      'cast',
      best((column) => column.share(isPeople), 0.8),
      'guessed',
    );
  giveTexts(left, cells, give);
  return { delimiter, cells, how };
}

/** Of two columns of text, the set is in capitals, or the shorter one; the other tells the story. */
function giveTexts(
  left: readonly Column[],
  cells: readonly (SceneCell | null)[],
  give: (cell: SceneCell, column: Column | undefined, how?: How) => void,
): void {
  const texts = left.filter((column) => column.share((cell) => /\p{L}{2}/u.test(cell)) > 0.5);
  if (cells.includes('set')) {
    give('synopsis', texts[0], texts.length > 1 ? 'guessed' : 'shape');
    return;
  }
  const length = (column: Column): number => {
    const count = column.cells.reduce((sum, cell) => sum + wordsOf(cell).length, 0);
    return count / Math.max(1, column.cells.length);
  };
  const capitals = texts.filter((column) => column.share(isUpper) > 0.7);
  const [set] = capitals.length > 0 ? capitals : [...texts].sort((a, b) => length(a) - length(b));
  give('set', set, capitals.length === 1 || texts.length === 1 ? 'shape' : 'guessed');
  const others = texts.filter((column) => column !== set);
  give('synopsis', others[0], others.length > 1 ? 'guessed' : 'shape');
}
