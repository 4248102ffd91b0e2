import type { PictureBand } from '../../report/printed/day-picture.ts';
import { BAND, bandLabel, bandWidth, LETTER, labelRoom } from './measures.ts';
import { hatch, rungs, zigzag } from './shapes.ts';

interface ShapeProps {
  readonly state: PictureBand['state'];
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Rungs for a gang, a zigzag for a clash, a hatch for a mute; a name nobody bears has no body. */
export function BandShape({ state, x, y, width }: ShapeProps) {
  return (
    <>
      {state === 'clash' ? (
        <path d={zigzag(x, y, width)} class="picture-edge" />
      ) : (
        <rect
          x={x}
          y={y}
          width={width}
          height={BAND}
          class={state === 'empty' ? 'picture-hollow' : 'picture-edge'}
        />
      )}
      {state === 'gang' && <path d={rungs(x, y, width)} class="picture-inside" />}
      {state === 'muted' && <path d={hatch(x, y, width)} class="picture-inside" />}
    </>
  );
}

interface BandProps {
  readonly band: PictureBand;
  readonly column: number;
  readonly y: number;
}

/** A band with its name, written once: it stays in sight while the band is scrolled past. */
export function Band({ band, column, y }: BandProps) {
  const x = band.from * column + 1.5;
  return (
    <>
      <BandShape state={band.state} x={x} y={y} width={bandWidth(band, column)} />
      <g class="picture-label" style={{ '--start': x, '--room': labelRoom(band, column) }}>
        <Label band={band} x={x} y={y} text={bandLabel(band, column)} />
      </g>
    </>
  );
}

interface LabelProps {
  readonly band: PictureBand;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

function Label({ band, x, y, text }: LabelProps) {
  if (text === '') return null;
  const plated = band.state === 'gang' || band.state === 'muted';
  return (
    <>
      {plated && (
        <rect x={x + 4} y={y + 6} width={text.length * LETTER + 6} height={BAND - 12} class="picture-plate" />
      )}
      <text x={x + 7} y={y + BAND / 2 + 4.5} class="picture-name">
        {text}
      </text>
    </>
  );
}
