import type { ComponentChildren } from 'preact';
import type { MARK_MEANS } from '../words/means.ts';
import {
  HEIGHT,
  type PictureBox,
  STRIP,
  STRIP_HEIGHT,
  STRIP_LINE,
  STRIP_WIDTH,
  TRACK_PICTURES,
  type TrackPicture,
  WIDTH,
} from './track-picture.ts';

/** What a state of a track or an input looks like; the sentence beside it says the same. */
export function TrackDrawing({ state }: { state: keyof typeof MARK_MEANS }) {
  const { boxes, lines, sign }: TrackPicture = TRACK_PICTURES[state];
  return (
    <Drawing width={WIDTH} height={HEIGHT}>
      <path d={lines} class="help-line" />
      {boxes.map((box) => (
        <Box key={`${box.x} ${box.y}`} box={box} />
      ))}
      {sign && (
        <>
          <path d={sign} class="help-halo" />
          <path d={sign} class="help-sign" />
        </>
      )}
    </Drawing>
  );
}

const Box = ({ box: { x, y, width, height, text, look } }: { box: PictureBox }) => (
  <>
    <rect x={x} y={y} width={width} height={height} rx="3" class={`help-box help-box-${look}`} />
    <text x={x + width / 2} y={y + height / 2 + 4.5} text-anchor="middle" class={`help-text-${look}`}>
      {text}
    </text>
  </>
);

/** The strip under every sheet that changes something: the mark stands before the first take that changes. */
export const StripDrawing = () => (
  <Drawing width={STRIP_WIDTH} height={STRIP_HEIGHT}>
    <path d={`M2 ${STRIP_LINE}H${STRIP_WIDTH - 2}`} class="help-line" />
    {STRIP.takes.map(({ x, width, text }) => (
      <Box key={text} box={{ x, y: STRIP_LINE - 11, width, height: 22, text, look: 'plain' }} />
    ))}
    <path d={`M${STRIP.markX} ${STRIP_LINE}V20m-6 8l6 -8 6 8`} class="help-sign" />
    <text x={STRIP.markX} y="13" text-anchor="middle" class="help-here">
      here
    </text>
    <text x={STRIP.nowX} y={STRIP_LINE - 8} text-anchor="middle">
      now
    </text>
  </Drawing>
);

interface DrawingProps {
  readonly width: number;
  readonly height: number;
  readonly children: ComponentChildren;
}

const Drawing = ({ width, height, children }: DrawingProps) => (
  <svg
    class="help-drawing"
    style={{ width: `${width / 16}rem` }}
    viewBox={`0 0 ${width} ${height}`}
    aria-hidden="true"
  >
    {children}
  </svg>
);
