import { BandShape } from './band.tsx';

const BAND = 30;

const SAMPLES = [
  ['single', 'one voice'],
  ['gang', 'ganged'],
  ['clash', 'clash'],
  ['muted', 'muted'],
] as const;

export function Legend() {
  return (
    <ul class="picture-legend soft">
      {SAMPLES.map(([state, word]) => (
        <li key={state}>
          <svg class="picture" width="2.5rem" height="1.25rem" viewBox="-2 -7 80 44" aria-hidden="true">
            <BandShape state={state} x={0} y={0} width={76} height={BAND} />
          </svg>
          {word}
        </li>
      ))}
      <li>
        <svg class="picture" width="2.5rem" height="1.25rem" viewBox="-2 -7 80 44" aria-hidden="true">
          <ellipse cx="38" cy={BAND / 2} rx="36" ry="14" class="picture-circle" />
        </svg>
        circled take
      </li>
    </ul>
  );
}
