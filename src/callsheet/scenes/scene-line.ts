import { isStrip } from './cast-strip.ts';
import { sceneRoleOf } from './scene-columns.ts';
import { addSet, addStrip, addTail } from './scene-row.ts';
import { dayNightWithin, intExtWithin, leadingScene, pagesIn, pagesWithin } from './scene-shapes.ts';
import { addCell, emptyScene, type SceneDraft } from './sheet-scene.ts';

/** A slug line holds at most so many words before its time of day or its figures. */
const LONGEST_SET = 14;

/**
 * A scene in running text: `'46A INT. KITCHEN - DAY 2 3/8 1, 2, 5'`, or `'46 Kitchen D 2/8 1'` where a heading of
 * scenes stands above. Null if the line is none.
 */
export function readSceneLine(text: string, line: number, isUnderHeading: boolean): SceneDraft | null {
  const plain = text.replace(/\s+/g, ' ').trim();
  const leading = leadingScene(plain);
  if (!leading || leading.number.length > 20) return null;
  const inOut = intExtWithin(leading.rest);
  const isSlug = inOut !== null && inOut.at <= 3;
  if (!isSlug && !(isUnderHeading && pagesWithin(leading.rest))) return null;
  const scene = emptyScene(line);
  addCell(scene, 'number', leading.number, 'shape');
  if (isSlug) addCell(scene, 'intExt', inOut.intExt, 'shape');
  const { set, dayNight, tail } = slugOf(isSlug ? inOut.rest : leading.rest);
  addCell(scene, 'set', set, dayNight ? 'shape' : 'guessed');
  if (dayNight) addCell(scene, 'dayNight', dayNight, 'shape');
  addTail(scene, tail, isUnderHeading);
  return scene;
}

/** The set ends at its time of day, else at a count of pages, else at the first figure or dash. */
function slugOf(text: string): { set: string; dayNight: string; tail: string } {
  const timed = dayNightWithin(text) ?? letterWithin(text);
  if (timed && timed.before.split(' ').length <= LONGEST_SET)
    return { set: trimmed(timed.before), dayNight: timed.dayNight, tail: timed.after };
  const at = text.search(/\s(?=\d|[-–—]\s)/);
  return at < 0
    ? { set: trimmed(text), dayNight: '', tail: '' }
    : { set: trimmed(text.slice(0, at)), dayNight: '', tail: text.slice(at).trim() };
}

/** `'KITCHEN D2 1 4/8'`: a letter for day or night is one only before figures, or at the end. */
function letterWithin(text: string): { before: string; dayNight: string; after: string } | null {
  const found = /\s[-–—]?\s?([DNTJ]\d{0,2}|D\/N)(?=\s+\d|\s*$)/.exec(text);
  if (!found) return null;
  const after = text.slice(found.index + found[0].length).trim();
  return { before: text.slice(0, found.index).trim(), dayNight: found[1]!, after };
}

const trimmed = (text: string): string => text.replace(/^[\s.,:/–—-]+|[\s.,:/–—-]+$/g, '');

const MOST_LINES = 6;
const LABELLED = /^([\p{L}/& ]{1,24}?)\s*[:=]\s*(.+)$/u;

/** `'Cast: 1, 2'`: a cell of the scene above, with its name. */
export function isLabelled(text: string): boolean {
  const role = sceneRoleOf(LABELLED.exec(text.trim())?.[1] ?? '');
  return role !== undefined && role !== 'aside' && role !== 'number';
}

/**
 * A further line of a scene in running text: a labelled cell (`'Cast: 1, 2, 5'`), a strip alone, or the story.
 * False if the scene has enough of them.
 */
export function addSceneLine(scene: SceneDraft, text: string, line: number): boolean {
  if (scene.lines.length > MOST_LINES) return false;
  const plain = text.replace(/\s+/g, ' ').trim();
  const labelled = LABELLED.exec(plain);
  const role = labelled ? sceneRoleOf(labelled[1]!) : undefined;
  if (role === 'aside' || role === 'number') return false;
  scene.lines.push(line);
  const value = role ? labelled![2]! : plain;
  if (role === 'cast' || (!role && isStrip(plain))) addStrip(scene, value, role ? 'heading' : 'shape');
  else if (role === 'set') addSet(scene, value, 'heading');
  else if (role === 'pages') addCell(scene, 'pages', pagesIn(value) || value, 'heading');
  else if (role) addCell(scene, role, value, 'heading');
  else addCell(scene, 'synopsis', plain, 'shape');
  return true;
}
