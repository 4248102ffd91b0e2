/** What part of a call sheet lines belong to, as their title says. */
export type Section = 'open' | 'scenes' | 'cast' | 'crowd' | 'later' | 'other';

const TITLES: Readonly<Record<Exclude<Section, 'open'>, string>> = {
  scenes:
    'scenes|scene order|shooting order|order of the day|scenes to shoot|shoot order|shooting schedule|schedule|szenen|drehfolge|ablauf|séquences|plan de travail|secuencias|escenas|scene da girare|today|set/scenes',
  cast: 'cast|cast list|cast calls?|principals?|principal cast|artists|artistes|performers|talent|actors|day players|dayplayers|supporting cast|darsteller|besetzung|schauspieler|comédiens|rôles|distribution|actores|reparto|attori|skådespelare|skuespillere|stunts|stunt performers',
  crowd:
    'background|bg|extras|supporting artists?|supporting actors|sas|crowd|atmos|atmosphere|background talent|stand-?ins|komparsen|komparserie|figuration|figurants|figuración|comparse|statister',
  later:
    'advance schedule|advanced schedule|advance|tomorrow|next day|next days?|advance call|preliminary|vorschau|nächster drehtag|morgen|prévisions|demain|avance|mañana|prossimo giorno|advance schedule for tomorrow',
  other:
    'crew|unit|unit list|crew list|crew calls?|departments?|department notes|department requirements|requirements|transport|transportation|catering|locations?|contacts?|contact list|key contacts|notes|unit notes|production notes|special notes|props|art department|costume|wardrobe|make-?up|camera|sound|grip|electrical|lighting|stunts notes|sfx|vfx|animals|vehicles|health and safety|safety|weather|stab|team|équipe|technique|equipo|equipo técnico|troupe|fahrer|transporte|movement order|general notes|facilities',
};
const TITLE_OF = new Map(
  Object.entries(TITLES).flatMap(([section, titles]) =>
    titles.split('|').map((title) => [title, section as Section] as const),
  ),
);

const bare = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\t;|,]+/g, ' ')
    .replace(/^[^\p{L}]+|[^\p{L})]+$/gu, '')
    .replace(/\s+/g, ' ')
    .replace(/\((?:cont(?:inue)?d?\.?)\)$/, '')
    .replace(/^(?:the|die|les|los)\s/, '')
    .trim();

/** The section that a line opens; null if it is no title. A title may be followed by a day or date. */
export function sectionTitled(line: string): Section | null {
  if (line.length > 80) return null;
  const text = bare(line);
  const found = TITLE_OF.get(text);
  if (found) return found;
  const [, title = ''] = /^(.+?)\s*(?:[:–—-]|for |\()\s*.*$/.exec(text) ?? [];
  return TITLE_OF.get(title) === 'later' ? 'later' : null;
}
