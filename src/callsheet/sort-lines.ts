import type { AsideLine, AsideReason } from './aside-line.ts';
import { columnsOf, isHeading, isRule } from './cast/cast-columns.ts';
import { CAST_LIST_LIMITS, type SheetLine, type UnreadLine } from './cast/cast-list.ts';
import { cellKind, cellsAt, type Delimiter } from './cells/sheet-cells.ts';
import { hasLetter, withoutUnseen } from './cells/sheet-names.ts';
import { isCrowdLine, isNote } from './notes.ts';
import { isSceneHeading, type SceneColumns, sceneColumnsOf } from './scenes/scene-columns.ts';
import { addSceneLine, isLabelled, readSceneLine } from './scenes/scene-line.ts';
import { addSceneRow, readSceneRow } from './scenes/scene-row.ts';
import type { SceneDraft } from './scenes/sheet-scene.ts';
import { tablesByShape } from './scenes/tables-by-shape.ts';
import { type Section, sectionTitled } from './sections.ts';

const MOST_SCENES = 300;

/** The lines of a sheet by what they are; `people` are still to be read as performers. */
export interface SortedSheet {
  readonly scenes: readonly SceneDraft[];
  readonly people: readonly SheetLine[];
  readonly aside: readonly AsideLine[];
  readonly unread: readonly UnreadLine[];
  readonly headings: readonly number[];
  /** Something says where the performers are. */
  readonly hasCastTitle: boolean;
}

export function sortSheet(lines: readonly SheetLine[]): SortedSheet {
  const readable = lines.filter(isWithinLimits);
  const sorter = new Sorter(
    tablesByShape(readable.map(({ line, text }) => ({ line, text: withoutUnseen(text) }))),
  );
  for (const one of lines) sorter.sort(one);
  return sorter;
}

const isWithinLimits = ({ line, text }: SheetLine): boolean =>
  line <= CAST_LIST_LIMITS.lines && text.length <= CAST_LIST_LIMITS.lineLength;

/** Headings of crew lists, which name jobs. */
const OF_CREW =
  /(?:^|[\t;|,]|\s{2,})\s*(?:position|job|job title|department|dept\.?|grade|crew|funktion|abteilung|poste|cargo|puesto|reparto tecnico)\s*(?=$|[\t;|,]|\s{2,})/i;
const STARTS_WITH_TIME = /^\s*\d{1,2}[:.h]\d{2}(?:\s*[-–]\s*\d{1,2}[:.h]\d{2})?\s*(?:[-–|:]\s*)?(?=\S)/;

class Sorter implements SortedSheet {
  readonly scenes: SceneDraft[] = [];
  readonly people: SheetLine[] = [];
  readonly aside: AsideLine[] = [];
  readonly unread: UnreadLine[] = [];
  readonly headings: number[] = [];
  hasCastTitle = false;
  private readonly tables: ReadonlyMap<number, SceneColumns>;
  private section: Section = 'open';
  /** Of the heading above; of the table of the last scene. */
  private named: SceneColumns | null = null;
  private last: SceneColumns | null = null;
  private castDelimiter: Delimiter | null = null;
  private lastSorted = 0;

  constructor(tables: ReadonlyMap<number, SceneColumns>) {
    this.tables = tables;
  }

  sort(one: SheetLine): void {
    const before = this.lastSorted;
    this.lastSorted = one.line;
    // What is beyond the limits is listed as such by the reader of performers.
    if (!isWithinLimits(one)) this.people.push({ ...one, isStrict: true });
    else this.sortText(one, withoutUnseen(one.text), before === one.line - 1);
  }

  private sortText(one: SheetLine, text: string, isAdjacent: boolean): void {
    if (isRule(text)) this.headings.push(one.line);
    else if (isAdjacent && isLabelled(text) && this.goOnWithScene(one, text)) return;
    else if (this.takeTitle(one, text) || this.takeHeading(one, text)) return;
    else if (this.section === 'later') this.setAside(one, 'other-day');
    else if (this.section === 'other') this.setAside(one, 'other-section');
    else if (this.takeScene(one, text)) return;
    else if (isNote(text) && !this.isCastRow(text)) this.setAside(one, 'note');
    else if (isCrowdLine(text) || this.section === 'crowd') this.setAside(one, 'crowd');
    else if (isAdjacent && this.goOnWithScene(one, text)) return;
    else this.people.push({ ...one, isStrict: this.section !== 'cast' });
  }

  private setAside({ line, text }: SheetLine, why: AsideReason): void {
    this.aside.push({ line, text, why });
  }

  private takeTitle({ line }: SheetLine, text: string): boolean {
    const title = sectionTitled(text);
    if (!title) return false;
    this.section = title;
    this.hasCastTitle ||= title === 'cast';
    this.named = null;
    this.headings.push(line);
    return true;
  }

  private takeHeading(one: SheetLine, text: string): boolean {
    const columns = sceneColumnsOf(text);
    if (columns || isSceneHeading(text)) {
      if (this.section !== 'later') this.section = 'scenes';
      this.named = columns;
      this.headings.push(one.line);
      return true;
    }
    if (this.section === 'later') return false;
    const ofCast = columnsOf(text);
    if (!ofCast && !isHeading(text)) return false;
    if (OF_CREW.test(text)) {
      this.section = 'other';
      this.headings.push(one.line);
      return true;
    }
    this.section = 'cast';
    this.hasCastTitle = true;
    this.castDelimiter = ofCast?.delimiter ?? null;
    this.people.push(one);
    return true;
  }

  private takeScene({ line, text: raw }: SheetLine, text: string): boolean {
    const columns = this.section === 'scenes' ? this.named : null;
    const table = this.tables.get(line) ?? null;
    const scene =
      (columns && readSceneRow(text, columns, line)) ??
      (table && readSceneRow(text, table, line)) ??
      readSceneLine(text.replace(STARTS_WITH_TIME, ''), line, this.section === 'scenes');
    if (!scene) return false;
    if (this.scenes.length >= MOST_SCENES) {
      this.unread.push({ line, text: raw, why: 'too-many' });
      return true;
    }
    this.last = columns ?? table;
    this.section = 'scenes';
    this.scenes.push(scene);
    return true;
  }

  /** Whether the line below a scene belongs to it. */
  private goOnWithScene({ line }: SheetLine, text: string): boolean {
    const scene = this.scenes.at(-1);
    if (!scene || this.section !== 'scenes' || scene.lines.at(-1) !== line - 1) return false;
    if (this.last && addSceneRow(scene, text, this.last, line)) return true;
    return !looksLikePerformer(text) && addSceneLine(scene, text, line);
  }

  /** A part may begin with the word for a break: `'LUNCH LADY'` beside a performer under named columns. */
  private isCastRow(text: string): boolean {
    if (this.section !== 'cast' || !this.castDelimiter) return false;
    return (
      cellsAt(text, this.castDelimiter).filter((cell) => hasLetter(cell) && !/\d{2}/.test(cell)).length > 1
    );
  }
}

/** Cells set apart, the first of them a number, and names among them. */
function looksLikePerformer(text: string): boolean {
  const cells = text.split(/\t|;|\||\s{2,}/).filter((cell) => cell.trim() !== '');
  const kinds = cells.map((cell) => cellKind(cell.trim()));
  return cells.length > 2 && kinds.includes('number') && kinds.includes('text');
}
