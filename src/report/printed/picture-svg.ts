import { escapeHtml } from '../escaped.ts';
import { isolated } from '../isolated.ts';
import type { TrackList } from '../track-lists.ts';
import {
  type BandPiece,
  type DayPicture,
  type PictureColumn,
  type PicturePart,
  pictureParts,
  pictureTitle,
} from './day-picture.ts';
import { bandShape } from './picture-shapes.ts';
import { takeNameParts } from './take-name.ts';
import { textWidth } from './text-width.ts';

const GUTTER = 28;
const NARROWEST = 25;
const WIDEST = 44;
const HEAD = 30;
const ROW = 17;
const BAND = 13;
/** Width of a letter at the size of names, rather too much than too little. */
const LETTER = 6.1;

export interface DrawnPart {
  readonly width: number;
  readonly height: number;
  /** A whole `svg` element. */
  readonly markup: string;
}

/**
 * The picture of a day as drawings below each other like lines of music, each no wider than `width`: takes across,
 * tracks down, every name once a run, and cut where its band ends so that none runs into another.
 */
export function pictureDrawings(picture: DayPicture, width: number): DrawnPart[] {
  if (picture.rows.length === 0) return [];
  const parts = pictureParts(picture, Math.floor((width - GUTTER) / NARROWEST));
  const most = Math.max(1, ...parts.map(({ columns }) => columns.length));
  const column = Math.min(WIDEST, (width - GUTTER) / most);
  return parts.map((part) => partDrawn(part, column));
}

function partDrawn(part: PicturePart, column: number): DrawnPart {
  const width = round(GUTTER + part.columns.length * column + 1);
  const height = HEAD + part.rows.length * ROW + 1;
  const [first, last] = [part.columns[0]!.text, part.columns.at(-1)!.text];
  const named = escapeHtml(`Who was on which track, ${first} to ${last}`);
  const markup = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="picture" role="img" aria-label="${named}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    ...part.columns.map((take, at) => head(part, take, at, column, height)),
    ...part.rows.map(({ number, bands }, at) => row(number, bands, HEAD + at * ROW, column)),
    '</svg>',
  ].join('');
  return { width, height, markup };
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** Text that ends where its box does, whatever the font. */
function boxed(text: string, x: number, y: number, width: number, height: number, name: string): string {
  const label = `<text class="${name}" x="2" y="${height - 3.2}">${isolatesAsSpans(escapeHtml(text))}</text>`;
  return `<svg aria-hidden="true" x="${round(x)}" y="${y}" width="${round(width)}" height="${height}">${label}</svg>`;
}

/** In a drawing an isolate is a part of the text. */
const isolatesAsSpans = (text: string): string =>
  text.replaceAll(/\u2068([^\u2068\u2069]*)\u2069/g, '<tspan unicode-bidi="isolate">$1</tspan>');

/** The take's number under its slate, which is written where the slate begins. */
function head(
  { columns, first }: PicturePart,
  take: PictureColumn,
  at: number,
  column: number,
  height: number,
): string {
  const x = round(GUTTER + at * column);
  const begins = at === 0 || take.startsSetup;
  const { slate, number } = takeNameParts(take.text);
  const next = columns.findIndex((other, place) => place > at && other.startsSetup);
  const room = ((next < 0 ? columns.length : next) - at) * column;
  const middle = round(x + column / 2);
  const size = Math.min(9.5, (column - 6) / (Math.max(1, textWidth(number)) * 0.6));
  const ring = take.circled
    ? `<ellipse class="ring" cx="${middle}" cy="21.5" rx="${round(column / 2 - 1.5)}" ry="6.5"/>`
    : '';
  return [
    `<path class="${begins && first + at > 0 ? 'setup' : 'line'}" d="M${x} ${begins ? 2 : 14}V${height}"/>`,
    begins && slate ? boxed(slate, x, 0, room, 13, 'slate') : '',
    ring,
    `<text class="number" x="${middle}" y="24.8" text-anchor="middle" font-size="${round(size)}">${escapeHtml(number)}</text>`,
  ].join('');
}

function row(number: string, bands: readonly BandPiece[], y: number, column: number): string {
  const size = Math.min(9.5, (GUTTER - 6) / (Math.max(1, textWidth(number)) * 0.62));
  return [
    `<text class="track" x="${GUTTER - 4}" y="${y + 12}" text-anchor="end" font-size="${round(size)}">${escapeHtml(number)}</text>`,
    ...bands.map((band) => bandDrawn(band, y + 2, column)),
  ].join('');
}

/** A band that goes on in the next part is open to that side. */
function bandDrawn(band: BandPiece, y: number, column: number): string {
  const x = round(GUTTER + band.from * column + (band.comesFrom ? 0 : 1.5));
  const end = GUTTER + (band.to + 1) * column - (band.goesOn ? 0 : 1.5);
  const width = round(end - x);
  const label = labelIn(band, width - 4);
  const plated = band.state === 'gang' || band.state === 'muted';
  const plate = round(Math.min(width - 2, textWidth(label) * LETTER + 3));
  return [
    bandShape(band.state, { x, y, width, height: BAND }),
    plated && label
      ? `<rect class="plate" x="${x + 1}" y="${y + 1.5}" width="${plate}" height="${BAND - 3}"/>`
      : '',
    label ? boxed(label, x, y, width, BAND, 'name') : '',
  ].join('');
}

/** The name and the word; if both do not fit, the shape says the word. */
function labelIn({ name, word }: BandPiece, width: number): string {
  const most = Math.floor(width / LETTER);
  const both = word ? `${isolated(name)}, ${word}` : name;
  if (textWidth(both) <= most) return both;
  if (textWidth(name) <= most) return name;
  let short = '';
  for (const letter of name) {
    if (textWidth(short + letter) + 1 > most) break;
    short += letter;
  }
  return short === '' ? '' : `${short.trimEnd()}…`;
}

/** How the drawings look, by the colours that the page around them names. */
export const PICTURE_STYLE = `
.picture { font: 9.5px system-ui, sans-serif; max-width: 100%; height: auto; }
.picture text { fill: var(--ink); }
.picture .name, .picture .slate, .picture .track { font-weight: 600; }
.picture .line { stroke: var(--line); }
.picture .setup { stroke: var(--ink); }
.picture .ring { fill: none; stroke: var(--ink); }
.picture .band { fill: var(--band); stroke: var(--ink); }
.picture .hollow { fill: none; stroke: var(--ink); stroke-dasharray: 3 2; }
.picture .inside { fill: none; stroke: var(--ink); stroke-width: .6; }
.picture .plate { fill: var(--paper); }
`;

const MARGIN = 16;
const TITLE = 34;
const LEGEND = 26;
const BETWEEN = 14;
const WIDE = 1100;

/** The pictures of a day as a file of their own, in ink on paper: what day, the drawings, and what the shapes mean. */
export function pictureFile(
  pictures: readonly (DayPicture & Pick<TrackList, 'on'>)[],
  subject: string,
): string {
  let y = MARGIN;
  let width = 460;
  const placed = pictures.flatMap((picture) => {
    const title = [subject, pictureTitle(picture)].filter(Boolean).join(': ');
    const named = `<text x="${MARGIN}" y="${y + 15}" font-size="15" font-weight="700">${isolatesAsSpans(escapeHtml(title))}</text>`;
    y += TITLE;
    const drawn = pictureDrawings(picture, WIDE).map((part) => {
      const at = y;
      y += part.height + BETWEEN;
      width = Math.max(width, part.width);
      return part.markup.replace('<svg ', `<svg x="${MARGIN}" y="${at}" `);
    });
    return [named, ...drawn];
  });
  const size = { width: Math.ceil(width) + 2 * MARGIN, height: y + LEGEND + MARGIN };
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="picture" width="${size.width}" height="${size.height}" viewBox="0 0 ${size.width} ${size.height}">`,
    `<style>:root { --ink: #1a1814; --line: #c9c2b2; --band: #ebe6d8; --paper: #fff; }${PICTURE_STYLE}</style>`,
    `<rect class="plate" width="${size.width}" height="${size.height}"/>`,
    ...placed,
    legendDrawn(MARGIN, y + 6),
    '</svg>',
  ].join('');
}

/** Each with where it begins. */
const SAMPLES = [
  ['single', 'one voice', 1],
  ['gang', 'ganged', 78],
  ['clash', 'clash', 142],
  ['muted', 'muted', 198],
] as const;

/** What the shapes mean, as an `svg` element. */
export const legendDrawn = (x = 0, y = 0): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" class="picture" role="img" aria-label="Shapes: one voice, ganged, clash, muted, circled take" x="${x}" y="${y}" width="340" height="20" viewBox="0 0 340 20">`,
    ...SAMPLES.map(
      ([state, word, from]) =>
        `${bandShape(state, { x: from, y: 4, width: 16, height: 12 })}<text x="${from + 19}" y="13.5">${word}</text>`,
    ),
    '<ellipse class="ring" cx="265" cy="10" rx="8" ry="6"/><text x="276" y="13.5">circled take</text></svg>',
  ].join('');
