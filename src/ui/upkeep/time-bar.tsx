import type { ComponentChildren } from 'preact';
import { clockTime } from '../words/times.ts';
import type { Short, TimeBar } from './time-bars.ts';
import type { TimeMark, TimeScale } from './time-scale.ts';
import './time-bar.css';

export const HEIGHT = 22;
export const TOP = 6;
export const BODY = 10;
const MIDDLE = TOP + BODY / 2;

export const percent = (share: number): string => `${Math.round(share * 10_000) / 100}%`;

/** A shape of fixed size at a share of the width. */
export const At = ({ share, children }: { share: number; children: ComponentChildren }) => (
  <svg x={percent(share)} overflow="visible" aria-hidden="true">
    {children}
  </svg>
);

/** One line for the meal break, two for wrap. */
export const MARK_LINES = { meal: 'M0 0V22', wrap: 'M-1.5 0V22M1.5 0V22' } as const;
export const CROSS = `M-5 ${MIDDLE - 5}l10 10m0 -10l-10 10`;
const DIAMOND = `M-6 ${MIDDLE}l6 -6 6 6 -6 6Z`;
const ARROW = `M-1 ${TOP - 3}l6 ${BODY / 2 + 3} -6 ${BODY / 2 + 3}`;

/** A bar from now, drawn on its scale. The row beside it says the same in words. */
export function TimeBarDrawing({ scale, bar }: { scale: TimeScale; bar: TimeBar }) {
  const { dueShare, endShare, goesOn, short } = bar;
  return (
    <svg class="time-bar" width="100%" height={HEIGHT} overflow="visible" aria-hidden="true">
      <path d={`M0 ${TOP - 4}v${BODY + 8}`} class="time-bar-line" />
      {dueShare > 0 && <rect x="0" y={TOP} width={percent(dueShare)} height={BODY} class="time-bar-full" />}
      {endShare > dueShare && (
        <rect
          x={percent(dueShare)}
          y={TOP}
          width={percent(endShare - dueShare)}
          height={BODY}
          class="time-bar-reserve"
        />
      )}
      {scale.marks.map((mark) => (
        <MarkLine key={mark.name} mark={mark} short={short} from={endShare} />
      ))}
      {goesOn && (
        <At share={1}>
          <path d={ARROW} class="time-bar-line" />
        </At>
      )}
    </svg>
  );
}

/** A mark's line; what falls short of it is drawn as the missing stretch and a cross, or a diamond on the reserve. */
function MarkLine({ mark, short, from }: { mark: TimeMark; short: Short | undefined; from: number }) {
  const missed = short?.to === mark.name ? short.how : undefined;
  return (
    <>
      {missed === 'out' && (
        <line x1={percent(from)} x2={percent(mark.share)} y1={MIDDLE} y2={MIDDLE} class="time-bar-missing" />
      )}
      <At share={mark.share}>
        <path d={MARK_LINES[mark.name]} class="time-bar-halo" />
        <path d={MARK_LINES[mark.name]} class="time-bar-mark" />
      </At>
      {missed && (
        <At share={mark.share}>
          <path d={missed === 'out' ? CROSS : DIAMOND} class="time-bar-short" />
        </At>
      )}
    </>
  );
}

interface LegendProps {
  readonly scale: TimeScale;
  readonly zone: number;
  readonly bars: readonly TimeBar[];
  /** What the end of a bar is called: `flat`. */
  readonly end: string;
}

/** What the bars show, with the hours of their marks. Only what is drawn is explained. */
export function TimeLegend({ scale, zone, bars, end }: LegendProps) {
  const clock = (ms: number): string => clockTime(ms, zone);
  const has = (how: Short['how']): boolean => bars.some(({ short }) => short?.how === how);
  return (
    <ul class="time-legend soft" aria-label="What the bars show">
      <li>from now, {clock(scale.nowMs)}</li>
      {scale.marks.map(({ name, atMs }) => (
        <Sample key={name} words={`${name} ${clock(atMs)}`}>
          <At share={0.5}>
            <path d={MARK_LINES[name]} class="time-bar-mark" />
          </At>
        </Sample>
      ))}
      {bars.some(({ endShare, dueShare }) => endShare > dueShare) && (
        <Sample words={`due, not yet ${end}`}>
          <rect x="1" y={TOP} width="22" height={BODY} class="time-bar-reserve" />
        </Sample>
      )}
      {has('out') && (
        <Sample words="will not last">
          <At share={0.5}>
            <path d={CROSS} class="time-bar-short" />
          </At>
        </Sample>
      )}
      {has('tight') && (
        <Sample words="may not last">
          <At share={0.5}>
            <path d={DIAMOND} class="time-bar-short" />
          </At>
        </Sample>
      )}
    </ul>
  );
}

export const Sample = ({ words, children }: { words: string; children: ComponentChildren }) => (
  <li>
    <svg class="time-bar" width="24" height={HEIGHT} aria-hidden="true">
      {children}
    </svg>
    {words}
  </li>
);
