import type { How } from '../cells/how-found.ts';
import { cellsAt, DELIMITERS, type Delimiter } from '../cells/sheet-cells.ts';
import type { SceneCell } from './sheet-scene.ts';

/** What each column of a table of scenes holds; null where it is not wanted. */
export interface SceneColumns {
  readonly delimiter: Delimiter;
  readonly cells: readonly (SceneCell | null)[];
  readonly how: readonly How[];
}

type Role = Exclude<SceneCell, 'crowd'> | 'crowd' | 'aside';

const PHRASES: Readonly<Record<Role, string>> = {
  number:
    'scene|scenes|sc|scn|sc no|sc nr|scene no|scene nr|scene number|scene #|sc #|sc number|szene|bild|bild nr|sz|séquence|sequence|séq|seq|n° séq|escena|esc|secuencia|sec|scena|scene(s)|scènes|scène',
  intExt: 'i/e|int/ext|int / ext|ie|e/i|int-ext|i/a|innen/außen|innen/aussen|int|i/e/d/n|int/ext d/n',
  set: 'set|set description|set & description|set and description|set/description|set / description|set & synopsis|set name|setting|motiv|décor|decor|decors|decorado|localización|ambiente|spielort|set / location|script location',
  dayNight:
    'd/n|day/night|day / night|dn|day|d or n|time of day|t/n|tag/nacht|tageszeit|j/n|jour/nuit|effet|effects|d/n/d|día/noche|luz|light|lighting|g/n|story day|d/n day',
  pages:
    'pages|pgs|pg|page|page count|8ths|eighths|length|pages/8|seiten|seite|umfang|pág|págs|páginas|pagine|pag',
  cast: 'cast|cast #|cast no|cast nos|cast nr|cast numbers|cast ids|characters|artists|artistes|chars|char|darsteller|rollen|rôles|roles|personnages|personajes|reparto|personaggi|who|cast id|cast members',
  crowd: 'background|bg|b/g|extras|atmos|atmosphere|sa|sas|crowd|komparsen|figurants|figuration|figuración',
  synopsis:
    'synopsis|description|action|story|summary|inhalt|kurzinhalt|résumé|resume|sinopsis|sinossi|contents|what happens|handlung',
  aside:
    'location|loc|script day|story|time|est|est time|start|end|notes|remarks|unit|vehicles|props|order|#|no|nr|shoot order|timing|est timing|stunts|call|i/o|sd|drehort|lieu|shots|setups',
};
const ROLE_OF = new Map(
  Object.entries(PHRASES).flatMap(([role, phrases]) =>
    phrases.split('|').map((phrase) => [phrase, role as Role] as const),
  ),
);
/** Headings that a table of performers has too. */
const SHARED = new Set(['no', 'nr', '#', 'call', 'notes', 'remarks', 'time']);

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[.:*_=[\]]/g, '')
    .replace(/\s+/g, ' ')
    .trim();

export const sceneRoleOf = (heading: string): Role | undefined => ROLE_OF.get(plain(heading));

const OF_A_PERSON =
  /^(?:artiste?|actor|actress|performer|player|talent|darsteller(?:\/in)?|actriz|acteur|actrice|comédiene?|comédien)(?: name)?$/;

/** Whether these headings are those of a table of scenes, not of performers. */
function isOfScenes(roles: readonly (Role | undefined)[], cells: readonly string[]): boolean {
  const has = (role: Role): boolean => roles.includes(role);
  if (!has('number')) return false;
  if (has('pages') || has('intExt') || has('dayNight')) return true;
  const isOfCast = cells.some((cell) => OF_A_PERSON.test(plain(cell)));
  return !isOfCast && (has('synopsis') || (has('set') && has('cast')));
}

/** The columns that a heading names, if it heads a table of scenes. */
export function sceneColumnsOf(line: string): SceneColumns | null {
  for (const delimiter of DELIMITERS) {
    const cells = cellsAt(line, delimiter);
    if (cells.filter(Boolean).length < 3) continue;
    const roles = cells.map(sceneRoleOf);
    if (!isOfScenes(roles, cells)) continue;
    const first = (role: Role | undefined, at: number): boolean => roles.indexOf(role) === at;
    return {
      delimiter,
      cells: roles.map((role, at) => (role && role !== 'aside' && first(role, at) ? role : null)),
      how: cells.map(() => 'heading'),
    };
  }
  return null;
}

/** A heading whose columns are not set apart: `'SC SET D/N PGS CAST'`. */
export function isSceneHeading(line: string): boolean {
  if (/\d(?!ths)/.test(line)) return false;
  const words = plain(line.replace(/[\t;,|]/g, ' '))
    .split(' ')
    .filter((word) => /[\p{L}#]/u.test(word));
  const roles = words.map((word) => ROLE_OF.get(word));
  const known = roles.filter((role, at) => role && !SHARED.has(words[at]!));
  return words.length > 2 && known.length >= words.length - 1 && isOfScenes(roles, words);
}
