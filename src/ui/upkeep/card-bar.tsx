import type { CardFill } from './card-fill.ts';
import { At, BODY, CROSS, HEIGHT, MARK_LINES, percent, Sample, TOP } from './time-bar.tsx';

/** A card as a bar: what was on it, what the day has put on it, and how full it will be at wrap. */
export function CardBar({ card, fill }: { card: string; fill: CardFill }) {
  const { beforeShare, todayShare, atWrap } = fill;
  const hatch = `on-before-${card}`;
  return (
    <svg class="time-bar" width="100%" height={HEIGHT} overflow="visible" aria-hidden="true">
      <Hatch id={hatch} />
      <rect x="0" y={TOP} width="100%" height={BODY} class="time-bar-reserve" />
      <rect x="0" y={TOP} width={percent(beforeShare)} height={BODY} fill={`url(#${hatch})`} />
      <rect
        x={percent(beforeShare)}
        y={TOP}
        width={percent(todayShare)}
        height={BODY}
        class="time-bar-full"
      />
      {typeof atWrap === 'number' && (
        <At share={atWrap}>
          <path d={MARK_LINES.wrap} class="time-bar-halo" />
          <path d={MARK_LINES.wrap} class="time-bar-mark" />
        </At>
      )}
      {atWrap === 'full' && (
        <At share={1}>
          <path d={CROSS} class="time-bar-short" />
        </At>
      )}
    </svg>
  );
}

const Hatch = ({ id }: { id: string }) => (
  <defs>
    <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse">
      <path d="M0 5L5 0" class="time-bar-line" />
    </pattern>
  </defs>
);

/** What the bars of the cards show. Only what is drawn is explained. */
export function CardLegend({ fills }: { fills: readonly CardFill[] }) {
  const isAtWrap = fills.some(({ atWrap }) => typeof atWrap === 'number');
  const isFull = fills.some(({ atWrap }) => atWrap === 'full');
  return (
    <ul class="time-legend soft" aria-label="What the bars show">
      {fills.some(({ beforeShare }) => beforeShare > 0) && (
        <Sample words="on it before">
          <Hatch id="on-before" />
          <rect x="1" y={TOP} width="22" height={BODY} class="time-bar-reserve" />
          <rect x="1" y={TOP} width="22" height={BODY} fill="url(#on-before)" />
        </Sample>
      )}
      <Sample words="today">
        <rect x="1" y={TOP} width="22" height={BODY} class="time-bar-full" />
      </Sample>
      <Sample words="left">
        <rect x="1" y={TOP} width="22" height={BODY} class="time-bar-reserve" />
      </Sample>
      {isAtWrap && (
        <Sample words="by wrap, at this pace">
          <At share={0.5}>
            <path d={MARK_LINES.wrap} class="time-bar-mark" />
          </At>
        </Sample>
      )}
      {isFull && (
        <Sample words="full before wrap">
          <At share={0.5}>
            <path d={CROSS} class="time-bar-short" />
          </At>
        </Sample>
      )}
    </ul>
  );
}
