import type { PictureBand } from '../../report/printed/day-picture.ts';
import { textWidth } from '../../report/printed/text-width.ts';
import { bandHeight, bandLabel, bandWidth, LETTER, labelRoom, nameSize } from './measures.ts';
import { hatch, rungs, zigzag } from './shapes.ts';

interface ShapeProps {
  readonly state: PictureBand['state'];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Rungs for a gang, a zigzag for a clash, a hatch for a mute; a name nobody bears has no body. */
export function BandShape({ state, x, y, width, height }: ShapeProps) {
  return (
    <>
      {state === 'clash' ? (
        <path d={zigzag(x, y, width, height)} class="picture-edge" />
      ) : (
        <rect
          x={x}
          y={y}
          width={width}
          height={height}
          class={state === 'empty' ? 'picture-hollow' : 'picture-edge'}
        />
      )}
      {state === 'gang' && <path d={rungs(x, y, width, height)} class="picture-inside" />}
      {state === 'muted' && <path d={hatch(x, y, width, height)} class="picture-inside" />}
    </>
  );
}

interface BandProps {
  readonly band: PictureBand;
  readonly column: number;
  /** The top of the row it is in, and how tall that is. */
  readonly top: number;
  readonly row: number;
}

/** A band with its name, written once: it stays in sight while the band is scrolled past. */
export function Band({ band, column, top, row }: BandProps) {
  const x = band.from * column + 1.5;
  const height = bandHeight(row);
  const y = top + (row - height) / 2;
  return (
    <>
      <BandShape state={band.state} x={x} y={y} width={bandWidth(band, column)} height={height} />
      <g class="picture-label" style={{ '--start': x, '--room': labelRoom(band, column) }}>
        <Label band={band} x={x} y={y} row={row} text={bandLabel(band, column)} />
      </g>
    </>
  );
}

interface LabelProps {
  readonly band: PictureBand;
  readonly x: number;
  readonly y: number;
  readonly row: number;
  readonly text: string;
}

function Label({ band, x, y, row, text }: LabelProps) {
  if (text === '') return null;
  const plated = band.state === 'gang' || band.state === 'muted';
  const height = bandHeight(row);
  const size = nameSize(row);
  const edge = height * 0.13;
  return (
    <>
      {plated && (
        <rect
          x={x + 4}
          y={y + edge}
          width={textWidth(text) * LETTER + 6}
          height={height - 2 * edge}
          class="picture-plate"
        />
      )}
      <text x={x + 7} y={y + height / 2 + size * 0.36} font-size={size} class="picture-name">
        {text}
      </text>
    </>
  );
}
