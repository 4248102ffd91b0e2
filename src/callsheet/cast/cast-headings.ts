/** What the headings of a cast list say. Words and abbreviations of call sheets: common practice, no source. */

export type Role =
  | 'number'
  | 'part'
  | 'person'
  | 'first'
  | 'last'
  | 'cast'
  | 'name'
  | 'pickUp'
  | 'onSet'
  | 'aside';

const ROLES: Readonly<Record<Role, readonly string[]>> = {
  number: [
    'no',
    'nr',
    'num',
    'number',
    '#',
    'id',
    'cast no',
    'cast #',
    'cast number',
    'cast id',
    '№',
    'n°',
    'nº',
    'nummer',
    'numéro',
    'número',
  ],
  part: [
    'character',
    'characters',
    'character name',
    'role',
    'roles',
    'part',
    'parts',
    'char',
    'plays',
    'rolle',
    'rollen',
    'figur',
    'rôle',
    'personnage',
    'personaje',
    'papel',
    'personaggio',
    'ruolo',
  ],
  person: ['artist', 'artiste', 'artists', 'actor', 'actress', 'performer', 'player', 'talent', 'person']
    .flatMap((word) => [word, `${word} name`])
    .concat('darsteller', 'darsteller/in', 'schauspieler', 'acteur', 'actrice', 'comédien', 'comédienne')
    .concat('comédien(ne)', 'interprète', 'intérprete', 'actriz', 'actor/actriz', 'attore', 'interprete'),
  first: ['first name', 'first', 'forename', 'given name'],
  last: ['last name', 'last', 'surname', 'family name'],
  cast: ['cast', 'cast member', 'played by'],
  name: ['name', 'full name'],
  pickUp: [
    'pick up',
    'pick-up',
    'pickup',
    'p/u',
    'pu',
    'collect',
    'collection',
    'abholung',
    'abholzeit',
    'départ',
  ].concat('recogida', 'prelievo'),
  onSet: [
    'on set',
    'set',
    'on-set',
    'onset',
    'set call',
    'am set',
    'drehfertig',
    'sur plateau',
    'en set',
    'sul set',
  ],
  aside: [
    'status',
    'swf',
    'w/h',
    'call',
    'call time',
    'report',
    'makeup',
    'm/u',
    'mu',
    'hmu',
    'hmc',
    'maske',
    'kostüm',
    'maquillage',
    'costume',
    'maquillaje',
    'vestuario',
    'trucco',
    'hotel',
    'scenes',
    'szenen',
    'séquences',
    'secuencias',
  ],
};
export const ROLE_OF = new Map(
  Object.entries(ROLES).flatMap(([role, phrases]) =>
    phrases.map((phrase) => [phrase, role as Role] as const),
  ),
);

export const HEADING_WORDS = new Set([
  ...[...ROLE_OF.keys()].flatMap((phrase) => phrase.split(' ')),
  ...'list sheet members principal principals supporting featured stunts stunt background extras day days'.split(
    ' ',
  ),
  ...'dayplayers w/n up hair wardrobe w’drobe costume cos set on ready remarks notes comments travel wrap est'.split(
    ' ',
  ),
  ...'make make-up hmu mu/h h/mu unit and of the scene scenes sc phone email age agent time times'.split(' '),
]);
export const SURE_HEADINGS = new Set([
  'cast',
  'principals',
  'extras',
  'background',
  'stunts',
  ...ROLE_OF.keys(),
]);

export const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[.:*_=()[\]]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
