import sample from '../../../sample-days/lanes.json';
import { listOf } from '../words/chain.ts';

const GUTTER = 28;
const COLUMN = 50;
const HEAD = 26;
const ROW = 30;
const BAND = 22;
const RUNGS = [5.5, 11, 16.5];
/** At most as wide as a letter is, on average. */
const LETTER = 7.6;
const WIDTH = GUTTER + sample.takes.length * COLUMN;
const HEIGHT = HEAD + sample.lanes.length * ROW;

type Lane = (typeof sample.lanes)[number];
type Band = Lane['bands'][number];

/** What the app does, in one picture: six takes of the sample day, and who was on which track. */
export function FirstPicture() {
  return (
    <svg class="first-picture" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={IN_WORDS}>
      {sample.takes.map(({ text, circled }, at) => (
        <g key={text}>
          <path d={`M${left(at)} 6V${HEIGHT}`} class="first-take" />
          {circled && <ellipse cx={left(at) + COLUMN / 2} cy="13" rx="24" ry="11" class="first-circle" />}
          <text x={left(at) + COLUMN / 2} y="17" text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {sample.lanes.map((lane, row) => (
        <g key={lane.track} transform={`translate(0 ${HEAD + row * ROW + (ROW - BAND) / 2})`}>
          <text x={GUTTER - 8} y="15.5" text-anchor="end" class="first-track">
            {lane.track}
          </text>
          {lane.bands.map((band) => (
            <BandShape key={band.from} band={band} />
          ))}
        </g>
      ))}
    </svg>
  );
}

const left = (take: number): number => GUTTER + take * COLUMN;

/** A gang has rungs, as everywhere; they begin where its name ends. */
function BandShape({ band: { from, to, name, state } }: { band: Band }) {
  const [x, width] = [left(from) + 1.5, (to - from + 1) * COLUMN - 3];
  const isGang = state === 'gang';
  const said = isGang ? `${name}, ganged` : name;
  const end = 12 + said.length * LETTER;
  return (
    <>
      <rect x={x} width={width} height={BAND} class="first-band" />
      {isGang && (
        <path d={RUNGS.map((y) => `M${x + end} ${y}h${width - end}`).join('')} class="first-rungs" />
      )}
      <text x={x + 8} y="15.5">
        {said}
      </text>
    </>
  );
}

const inWords = ({ track, bands }: Lane): string =>
  `track ${track}: ${bands
    .map(({ name, state }) => (state === 'gang' ? `${name}, ganged` : name))
    .join(', then ')}`;

const IN_WORDS = `Who was on which track in ${listOf(sample.takes.map(({ text }) => text))}. ${sample.lanes
  .map(inWords)
  .join('; ')}.`;
