import { useEffect, useRef, useState } from 'preact/hooks';
import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { FAMILIES } from '../../radio/intermodulation/hit.ts';
import { type Stretch, stretchesOf } from '../../radio/spectrum/frequency-axis.ts';
import { type CarrierMark, FAMILY_LINES, spectrumLayout } from '../../radio/spectrum/spectrum-layout.ts';
import { FAMILY_FORMULA, FAMILY_NAME, rangeWords } from './words.ts';

const PLOT_PX = 120;
const GUARD_ROW_PX = 7;
const LETTER_SHARE = 0.62;
const FONT_REM = 0.75;

/** The name includes how often a carrier is hit: the picture must not rely on colour. */
const named = (analysis: Analysis): Analysis => ({
  ...analysis,
  carriers: analysis.carriers.map((carrier, at) => {
    const hits = analysis.hitsOnCarrier[at] ?? 0;
    return hits > 0 ? { ...carrier, name: `${carrier.name} ×${hits}` } : carrier;
  }),
});

/**
 * The plan on a frequency axis: carriers with their names, guards under the axis, products by height and
 * dashes. Carriers far apart get separate panels.
 */
export function Spectrum({ analysis, label }: { analysis: Analysis; label: string }) {
  const { frame, widthPx } = useWidth();
  const shown = named(analysis);
  return (
    <figure class="spectrum">
      <div class="spectrum-frame" ref={frame} role="img" aria-label={label}>
        {stretchesOf(analysis).map((stretch) => (
          <Panel key={stretch.fromKhz} analysis={shown} stretch={stretch} widthPx={widthPx} />
        ))}
      </div>
      <Legend analysis={analysis} />
    </figure>
  );
}

interface PanelProps {
  readonly analysis: Analysis;
  readonly stretch: Stretch;
  readonly widthPx: number;
}

/** One range of the plan. */
function Panel({ analysis, stretch, widthPx }: PanelProps) {
  const fontPx = FONT_REM * rootPx();
  const layout = spectrumLayout(analysis, widthPx, fontPx * LETTER_SHARE, stretch);
  if (!layout.axis) return null;
  const rowPx = fontPx * 1.25;
  const top = layout.labelRowCount * rowPx + 4;
  const axisY = top + PLOT_PX;
  const families = FAMILIES.filter((family) => layout.guards.some((guard) => guard.family === family));
  const ticksY = axisY + families.length * GUARD_ROW_PX + fontPx + 6;
  const height = ticksY + 6;
  const hatch = `in-use-${stretch.fromKhz}`;
  return (
    <svg width={widthPx} height={height} viewBox={`0 0 ${widthPx} ${height}`} aria-hidden="true">
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
      {layout.carriers.map((mark) => (
        <CarrierLine key={mark.id} mark={mark} top={top} axisY={axisY} labelY={labelY(top, rowPx, mark)} />
      ))}
      {layout.carriers.map((mark) => (
        <text
          key={mark.id}
          x={mark.labelLeftPx}
          y={labelY(top, rowPx, mark)}
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

const labelY = (top: number, rowPx: number, { labelRow }: CarrierMark): number => top - labelRow * rowPx - 6;

const anchorAt = (xPx: number, widthPx: number): 'start' | 'middle' | 'end' =>
  xPx < 24 ? 'start' : xPx > widthPx - 24 ? 'end' : 'middle';

const cross = (x: number, y: number): string => `M${x - 3.5} ${y - 3.5}l7 7m0 -7l-7 7`;

interface CarrierLineProps {
  readonly mark: CarrierMark;
  readonly top: number;
  readonly axisY: number;
  readonly labelY: number;
}

/** A full head for carriers we receive, hollow for those that only radiate, dots for those off. */
function CarrierLine({ mark, top, axisY, labelY: nameY }: CarrierLineProps) {
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

function Legend({ analysis }: { analysis: Analysis }) {
  const { guards } = analysis;
  const shown = FAMILIES.filter(
    (family) =>
      (family === 'two-tone-third' && guards.twoToneThirdKhz > 0) ||
      (family === 'three-tone-third' && guards.threeToneThirdKhz > 0) ||
      (family === 'two-tone-fifth' && guards.twoToneFifthKhz > 0),
  );
  return (
    <figcaption class="spectrum-legend">
      <span>MHz</span>
      <Sample d="M12 26V2" kind="spectrum-carrier" words="carrier; full head: listened to" />
      {shown.map((family) => (
        <Sample
          key={family}
          d={`M12 26V${26 - 24 * FAMILY_LINES[family].heightShare}`}
          kind="spectrum-guard"
          dashes={FAMILY_LINES[family].dashesPx.join(' ')}
          words={`${FAMILY_FORMULA[family]}, ${FAMILY_NAME[family]}`}
        />
      ))}
      <Sample d={cross(12, 14)} kind="spectrum-hit" words="hit" />
      <Sample d="M4 12v4M4 14h16m0 -2v4" kind="spectrum-guard" words="guard" />
    </figcaption>
  );
}

interface SampleProps {
  readonly d: string;
  readonly kind: string;
  readonly words: string;
  readonly dashes?: string;
}

const Sample = ({ d, kind, words, dashes }: SampleProps) => (
  <span>
    <svg width="24" height="28" viewBox="0 0 24 28" aria-hidden="true">
      <path d={d} class={kind} stroke-dasharray={dashes} />
    </svg>
    {words}
  </span>
);

const rootPx = (): number => Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;

/** The width available for the picture, updated as the phone turns. */
function useWidth() {
  const frame = useRef<HTMLDivElement>(null);
  const [widthPx, setWidth] = useState(0);
  useEffect(() => {
    const shown = frame.current;
    if (!shown) return;
    const measure = (): void => setWidth(Math.floor(shown.clientWidth));
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(shown);
    return () => watch.disconnect();
  }, []);
  return { frame, widthPx };
}
