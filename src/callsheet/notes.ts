/** Lines of a call sheet that are no rows: breaks, moves, weather, footers, remarks. Common practice, no source. */

const BREAKS =
  'lunch|breakfast|dinner|supper|meal|tea break|coffee|break|mittag(?:spause|essen)?|pause|frühstück|déjeuner|dîner|petit déjeuner|comida|almuerzo|cena|desayuno|pranzo|colazione|lunsj|frukost|pauze';
const MOVES =
  'unit move|company move|move to|moving to|set move|relocate|umzug|motivwechsel|déplacement|changement de décor|traslado|cambio de set|spostamento|travel(?: time)?';
const SKY =
  'weather|forecast|sunrise|sunset|sun rise|sun set|first light|last light|high|low|wind|rain|temp(?:erature)?|wetter|sonnenaufgang|sonnenuntergang|météo|lever du soleil|coucher du soleil|clima|tiempo|amanece|meteo|alba|tramonto|væ?r|tides?|high water|low water';
const CALLS =
  'unit call|crew call|general call|shooting call|call time|set call|turnover|est(?:imated)? wrap|wrap|camera wrap|drehschluss|drehbeginn|fin de journée|fin de tournage|prêt à tourner|pat|fin de jornada|fine riprese|end of (?:day|shoot(?:ing)?|sc(?:ene)?s?)|rushes|curfew';
const PLACES =
  'unit base|base camp|basecamp|location|locations|parking|crew park(?:ing)?|hospital|nearest (?:a&e|hospital)|a&e|police|fire|adresse|drehort|lieu|localización|what3words|car ?park|toilets|holding|catering|basis';
const SHEET =
  'call ?sheet|shooting schedule|one ?liner|tagesdispo|dispo|feuille de service|orden de rodaje|hoja de rodaje|ordine del giorno|production|producers?|director|directed by|1st ad|2nd ad|first ad|regie|réalisation|dirección|regia|page|seite|total|totals|subtotal|continued|script (?:dated?|version)|version|draft|draft \\d|issued|date|day \\d+ of \\d+|drehtag|tag \\d+ (?:von|\\/)|shoot(?:ing)? day|jour \\d+ (?:de|sur|\\/)|día \\d+ (?:de|\\/)|week';
const REMARKS =
  'n\\.?b\\.?|notes?|please|all crew|everyone|attention|reminder|important|hinweise?|achtung|bitte|remarques?|nota|atención|requirements|props?|art dept\\.?|art department|sfx|vfx|stunts?:|make-?up:|make-?up/hair|hair(?: and| &)|costume|wardrobe:|sound|camera|grips?|electric|lighting|vehicles|animals|security|health (?:and|&) safety|h&s|medic|transport|drivers?|stand ?ins?|chaperone|dialogue coach|intimacy|safety|covid|closed set|phones?|tel\\.?|mobile|fax|email|www|http';
const CLOCK = String.raw`(?:\d{1,2}[:.h]?\d{2}(?:\s*[ap]\.?m\.?)?(?:\s*h(?:rs?)?)?\s*(?:[-–]\s*\d{1,2}[:.h]\d{2}|to\s+\d{1,2}[:.h]?\d{2})?)`;
const ORNAMENT = String.raw`[\s*=_~•·>#–—-]*`;
const BEGINS = new RegExp(
  `^${ORNAMENT}(?:${CLOCK}${ORNAMENT})?(?:(?:${[BREAKS, MOVES, SKY, CALLS, PLACES, SHEET, REMARKS].join('|')})(?![\\p{L}\\d]))`,
  'iu',
);
/** `'--- LUNCH ---'`, `'1 hr lunch'`, `'30 min break'`. */
const WITHIN = new RegExp(
  `^[\\s*=_~-]*(?:\\d+\\s*(?:hr?s?|hours?|mins?|minutes?|min\\.|std\\.?)\\s+)(?:${BREAKS}|${MOVES})`,
  'iu',
);
const COUNTS_PEOPLE = /^\s*\d{1,3}\s*[x×]\s+\p{L}/iu;
const PAGE_OF = /^\s*(?:page\s*)?\d{1,2}\s*(?:\/|of|von|sur|de)\s*\d{1,2}\s*$/i;

/** Whether a line is a note, and no row of a table. A row with a scene or cast number has been read before. */
export const isNote = (text: string): boolean => BEGINS.test(text) || WITHIN.test(text) || PAGE_OF.test(text);

/** `'12 x Villagers'`: background, counted and not named. */
export const isCrowdLine = (text: string): boolean => COUNTS_PEOPLE.test(text);
