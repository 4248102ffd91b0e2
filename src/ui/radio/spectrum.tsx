import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { FAMILIES } from '../../radio/intermodulation/hit.ts';
import { type Stretch, stretchesOf } from '../../radio/spectrum/frequency-axis.ts';
import { type CarrierMark, FAMILY_LINES, spectrumLayout } from '../../radio/spectrum/spectrum-layout.ts';
import { useDrawingSize } from '../kit/drawing-size.ts';
import { flagRows } from './flag-rows.ts';
import { labelled } from './spectrum-labels.ts';
import { cross, SpectrumLegend } from './spectrum-legend.tsx';
import { rangeWords } from './words.ts';

const PLOT_PX = 120;
const GUARD_ROW_PX = 7;
const LETTER_SHARE = 0.62;
const FONT_REM = 0.75;

interface SpectrumProps {
  readonly analysis: Analysis;
  readonly label: string;
  /** Who wears the pack on a carrier. */
  readonly wearerOf: (carrier: string) => string | undefined;
}

/**
 * The plan on a frequency axis: carriers with their names, guards under the axis, products by height and
 * dashes. Carriers far apart get separate panels.
 */
export function Spectrum({ analysis, label, wearerOf }: SpectrumProps) {
  const { frame, size } = useDrawingSize();
  const shown = labelled(analysis, wearerOf);
  return (
    <figure class="spectrum">
      <div class="spectrum-frame" ref={frame} role="img" aria-label={label}>
        {stretchesOf(analysis).map((stretch) => (
          <Panel
            key={stretch.fromKhz}
            analysis={shown}
            stretch={stretch}
            widthPx={size.widthPx}
            fontPx={FONT_REM * size.remPx}
          />
        ))}
      </div>
      <SpectrumLegend analysis={analysis} />
    </figure>
  );
}

interface PanelProps {
  readonly analysis: Analysis;
  readonly stretch: Stretch;
  readonly widthPx: number;
  readonly fontPx: number;
}

/** One range of the plan. */
function Panel({ analysis, stretch, widthPx, fontPx }: PanelProps) {
  const layout = spectrumLayout(analysis, widthPx, letterPx(analysis, fontPx), stretch);
  if (!layout.axis) return null;
  const rowPx = fontPx * 1.25;
  const flags = flagRows(
    layout.carriers.map(({ xPx, labelWidthPx }) => ({ xPx, widthPx: labelWidthPx })),
    widthPx,
  );
  const top = (Math.max(...flags.map(({ row }) => row)) + 1) * rowPx + 4;
  const nameY = (at: number): number => top - (flags[at]?.row ?? 0) * rowPx - 6;
  const axisY = top + PLOT_PX;
  const families = FAMILIES.filter((family) => layout.guards.some((guard) => guard.family === family));
  const ticksY = axisY + families.length * GUARD_ROW_PX + fontPx + 6;
  const height = ticksY + 6;
  const hatch = `in-use-${stretch.fromKhz}`;
  return (
    <svg
      width={widthPx}
      height={height}
      viewBox={`0 0 ${widthPx} ${height}`}
      style={{ fontSize: `${fontPx}px` }}
      aria-hidden="true"
    >
      <title>{rangeWords(stretch.fromKhz, stretch.toKhz)}</title>
      <defs>
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse">
          <path d="M0 7L7 0" class="spectrum-hatch" />
        </pattern>
      </defs>
      {layout.blocks.map(({ name, xPx, widthPx: width }) => (
        <rect key={name} x={xPx} y={top} width={width} height={PLOT_PX} fill={`url(#${hatch})`} />
      ))}
      {layout.products.map(({ family, xPx, hits }) => (
        <path
          key={`${family}${xPx}`}
          d={`M${xPx + 0.5} ${axisY}V${axisY - PLOT_PX * FAMILY_LINES[family].heightShare}`}
          class={hits ? 'spectrum-hit' : 'spectrum-product'}
          stroke-dasharray={FAMILY_LINES[family].dashesPx.join(' ')}
        />
      ))}
      {layout.hits.slice(0, MOST_CROSSES).map(({ xPx, hit }, at) => (
        <path
          key={at}
          d={cross(xPx, axisY - PLOT_PX * FAMILY_LINES[hit.family].heightShare)}
          class="spectrum-hit"
        />
      ))}
      {layout.guards.map(({ carrierId, family, xPx, widthPx: width }) => {
        const y = axisY + 5 + families.indexOf(family) * GUARD_ROW_PX;
        return (
          <path
            key={`${carrierId}${family}`}
            d={`M${xPx} ${y - 2}v4M${xPx} ${y}h${width}m0 -2v4`}
            class="spectrum-guard"
          />
        );
      })}
      {layout.carriers.map((mark, at) => (
        <CarrierLine key={mark.id} mark={mark} top={top} axisY={axisY} nameY={nameY(at)} />
      ))}
      {layout.carriers.map((mark, at) => (
        <text
          key={mark.id}
          x={flags[at]?.leftPx}
          y={nameY(at)}
          class={mark.hitCount > 0 ? 'spectrum-name spectrum-warned' : 'spectrum-name'}
        >
          {mark.name}
        </text>
      ))}
      {layout.blocks.map(({ name, xPx, widthPx: width }) => (
        <text key={name} x={xPx + 3} y={top + fontPx} class="spectrum-text spectrum-block">
          {width > name.length * fontPx * LETTER_SHARE ? name : ''}
        </text>
      ))}
      <path d={`M0 ${axisY}H${widthPx}`} class="spectrum-axis" />
      {layout.ticks.map(({ khz, xPx, label: text }) => (
        <g key={khz}>
          <path d={`M${xPx} ${axisY}v${ticksY - axisY - fontPx}`} class="spectrum-tick" />
          <text x={xPx} y={ticksY} class="spectrum-text" text-anchor={anchorAt(xPx, widthPx)}>
            {text}
          </text>
        </g>
      ))}
    </svg>
  );
}

const MOST_CROSSES = 400;

const anchorAt = (xPx: number, widthPx: number): 'start' | 'middle' | 'end' =>
  xPx < 24 ? 'start' : xPx > widthPx - 24 ? 'end' : 'middle';

interface CarrierLineProps {
  readonly mark: CarrierMark;
  readonly top: number;
  readonly axisY: number;
  readonly nameY: number;
}

/** A full head for carriers we receive, hollow for those that only radiate, dots for those off. */
function CarrierLine({ mark, top, axisY, nameY }: CarrierLineProps) {
  return (
    <g>
      <path
        d={`M${mark.xPx} ${axisY}V${nameY + 2}`}
        class="spectrum-carrier"
        stroke-dasharray={mark.transmitting ? undefined : '2 4'}
      />
      <circle cx={mark.xPx} cy={top + 6} r="3.5" class={mark.victim ? 'spectrum-full' : 'spectrum-hollow'} />
    </g>
  );
}

/** As wide as the letters of the widest name are on average: names must not run into each other. */
function letterPx({ carriers }: Analysis, fontPx: number): number {
  const paper = document.createElement('canvas').getContext('2d');
  if (!paper) return fontPx * LETTER_SHARE;
  paper.font = `700 ${fontPx}px ${getComputedStyle(document.body).fontFamily}`;
  return Math.max(
    ...carriers.map(({ name }) => paper.measureText(name).width / Math.max(1, [...name].length)),
  );
}
