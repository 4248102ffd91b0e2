import type { PictureBand } from '../../report/printed/day-picture.ts';
import { BAND, bandLabel, bandWidth, LETTER, labelPlaces } from './measures.ts';
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

/** A band with its name. */
export function Band({ band, column, y }: BandProps) {
  return (
    <>
      <BandShape state={band.state} x={band.from * column + 1.5} y={y} width={bandWidth(band, column)} />
      <Labels band={band} column={column} y={y} places={labelPlaces(band, column).slice(0, 1)} />
    </>
  );
}

/** Repeats a long band's name, whose start may be out of sight. Visual only: the band itself says it. */
export const NameAgain = (props: BandProps) => (
  // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a drawing without links or a tab stop takes no focus
  <g class="picture-again" aria-hidden="true">
    <Labels {...props} places={labelPlaces(props.band, props.column).slice(1)} />
  </g>
);

function Labels({ band, column, y, places }: BandProps & { readonly places: readonly number[] }) {
  const x = band.from * column + 1.5;
  const label = bandLabel(band, column);
  const plated = band.state === 'gang' || band.state === 'muted';
  return (
    <>
      {places.map((from) => (
        <g key={from}>
          {plated && (
            <rect
              x={x + from + 4}
              y={y + 6}
              width={label.length * LETTER + 6}
              height={BAND - 12}
              class="picture-plate"
            />
          )}
          <text x={x + from + 7} y={y + BAND / 2 + 4.5} class="picture-name">
            {label}
          </text>
        </g>
      ))}
    </>
  );
}
