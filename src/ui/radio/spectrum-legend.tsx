import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { FAMILIES } from '../../radio/intermodulation/hit.ts';
import { FAMILY_LINES } from '../../radio/spectrum/spectrum-layout.ts';
import { FAMILY_FORMULA, FAMILY_NAME } from './words.ts';

/** The mark of a hit. */
export const cross = (x: number, y: number): string => `M${x - 3.5} ${y - 3.5}l7 7m0 -7l-7 7`;

/** What the lines and marks of the spectrum are. */
export function SpectrumLegend({ analysis }: { analysis: Analysis }) {
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
      <Sample d="M12 26V2" kind="spectrum-carrier" words="carrier; full head: received here" />
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
      <Sample d="M4 12v4M4 14h16m0 -2v4" kind="spectrum-guard" words="minimum spacing" />
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
