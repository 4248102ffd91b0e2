import type { TakeId } from '../../day/model.ts';
import type { DayPicture, PictureBand, PictureColumn } from '../../report/day-picture.ts';

interface DrawingProps {
  readonly picture: DayPicture;
  /** CSS pixels a take. */
  readonly columnWidth: number;
  readonly onTake: (take: TakeId) => void;
}

const GUTTER = 34;
const HEAD = 76;
const ROW = 48;
const BAND = 30;
/** A column narrower than this has its name set upright. */
const UPRIGHT_BELOW = 56;
const LETTER = 7;

/** Takes along, tracks down. Every band and every take is a button that opens the take. */
export function DayDrawing({ picture, columnWidth, onTake }: DrawingProps) {
  const { columns, rows } = picture;
  const width = GUTTER + columns.length * columnWidth + 8;
  const height = HEAD + rows.length * ROW + 4;
  return (
    <svg
      class="picture"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label="Picture of the day"
    >
      {columns.map((column, at) => (
        <Column
          key={column.takeId}
          column={column}
          x={GUTTER + at * columnWidth}
          width={columnWidth}
          height={height}
          onTake={onTake}
        />
      ))}
      {rows.map((row, at) => {
        const y = HEAD + at * ROW + (ROW - BAND) / 2;
        return (
          <g key={row.track}>
            <text x={GUTTER - 8} y={y + BAND / 2 + 5} text-anchor="end" class="picture-number">
              {row.number}
            </text>
            {row.bands.map((band) => (
              <Band
                key={band.fromTake}
                band={band}
                track={row.number}
                columns={columns}
                x={GUTTER + band.from * columnWidth + 1.5}
                y={y}
                width={(band.to - band.from + 1) * columnWidth - 3}
                onTake={onTake}
              />
            ))}
          </g>
        );
      })}
    </svg>
  );
}

/** What a button is to a mouse, to a finger and to a keyboard, in a drawing. */
const button = (label: string, onTap: () => void) => ({
  role: 'button' as const,
  tabindex: 0,
  'aria-label': label,
  onClick: onTap,
  onKeyDown: (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    onTap();
  },
});

interface ColumnProps {
  readonly column: PictureColumn;
  readonly x: number;
  readonly width: number;
  readonly height: number;
  readonly onTake: (take: TakeId) => void;
}

function Column({ column, x, width, height, onTake }: ColumnProps) {
  const middle = x + width / 2;
  const upright = width < UPRIGHT_BELOW;
  const long = column.text.length * LETTER + 8;
  const turn = upright ? `rotate(-90 ${middle} ${HEAD - 40})` : undefined;
  return (
    <g
      class="picture-take"
      {...button(`${column.text}${column.circled ? ', circled' : ''}, take`, () => onTake(column.takeId))}
    >
      <path d={`M${x} ${HEAD - 4}V${height}`} class={column.startsSetup ? 'picture-setup' : 'picture-line'} />
      <rect x={x} y="0" width={width} height={HEAD - 4} fill="transparent" />
      <g transform={turn}>
        {column.circled && (
          <ellipse cx={middle} cy={HEAD - 40} rx={Math.min(long, 72) / 2} ry="11" class="picture-circle" />
        )}
        <text x={middle} y={HEAD - 36} text-anchor="middle" class="picture-name">
          {column.text}
        </text>
      </g>
    </g>
  );
}

interface BandProps {
  readonly band: PictureBand;
  readonly track: string;
  readonly columns: readonly PictureColumn[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly onTake: (take: TakeId) => void;
}

/** A band with the mark of its state laid on its side: rungs for a gang, a zigzag for a clash, a hatch for a mute. */
function Band({ band, track, columns, x, y, width, onTake }: BandProps) {
  const span = `${columns[band.from]?.text} to ${columns[band.to]?.text}`;
  const words = band.word ? `${band.name}, ${band.word}` : band.name;
  const shown = wholeWords(words, Math.floor((width - 10) / LETTER));
  return (
    <g class="picture-band" {...button(`${words}, track ${track}, ${span}`, () => onTake(band.fromTake))}>
      {band.state === 'clash' ? (
        <path d={zigzag(x, y, width)} class="picture-edge" />
      ) : (
        <rect x={x} y={y} width={width} height={BAND} class="picture-edge" />
      )}
      {band.state === 'gang' && <path d={rungs(x, y, width)} class="picture-inside" />}
      {band.state === 'muted' && <path d={hatch(x, y, width)} class="picture-inside" />}
      {shown.length > 1 && (
        <>
          <rect
            x={x + 4}
            y={y + 6}
            width={shown.length * LETTER + 6}
            height={BAND - 12}
            class="picture-plate"
          />
          <text x={x + 7} y={y + BAND / 2 + 5} class="picture-name">
            {shown}
          </text>
        </>
      )}
    </g>
  );
}

/** As many whole words as fit: what is seen is part of what is said aloud (WCAG 2.2, 2.5.3). */
function wholeWords(text: string, most: number): string {
  if (text.length <= most) return text;
  const end = text.lastIndexOf(' ', Math.max(0, most));
  return end <= 0 ? '' : text.slice(0, end).replace(/,$/, '');
}

/** Both long edges as teeth: not on purpose. */
function zigzag(x: number, y: number, width: number): string {
  const teeth = Math.max(2, Math.round(width / 9));
  const step = width / teeth;
  const along = Array.from(
    { length: teeth },
    (_, at) => `l${step / 2} ${at % 2 === 0 ? -5 : 5}l${step / 2} ${at % 2 === 0 ? 5 : -5}`,
  );
  const back = along.map((tooth) => tooth.replaceAll(/l(-?[\d.]+)/g, (_, dx) => `l${-Number(dx)}`));
  return `M${x} ${y}${along.join('')}V${y + BAND}${back.join('')}Z`;
}

const rungs = (x: number, y: number, width: number): string =>
  [6, 12, 18, 24].map((down) => `M${x} ${y + down}h${width}`).join('');

function hatch(x: number, y: number, width: number): string {
  const lines: string[] = [];
  for (let from = 0; from < width; from += 9) {
    const reach = Math.min(BAND, width - from);
    lines.push(`M${x + from} ${y + BAND}l${reach} ${-reach}`);
  }
  return lines.join('');
}
