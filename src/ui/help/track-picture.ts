// In drawing units, 16 to the rem: the picture grows with the text of the phone.
export const WIDTH = 176;
export const HEIGHT = 52;
const BOX = 22;
const MIDDLE = HEIGHT / 2;
/** Where lines meet before a track. */
const JOIN = 84;

export interface PictureBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly text: string;
  /** `missing` is a place where somebody or something could be. */
  readonly look: 'full' | 'plain' | 'missing';
}

/** How a track comes by its voices, as boxes from left to right and the lines between them. */
export interface TrackPicture {
  readonly boxes: readonly PictureBox[];
  /** Lines that carry sound or could. */
  readonly lines: string;
  /** What is wrong, or done on purpose, drawn over the lines. */
  readonly sign?: string;
}

const box = (
  x: number,
  width: number,
  middle: number,
  text: string,
  look: PictureBox['look'],
): PictureBox => ({
  x,
  y: middle - BOX / 2,
  width,
  height: BOX,
  text,
  look,
});

const performer = (middle: number, text: string): PictureBox => box(1, 48, middle, text, 'plain');
const track = (look: PictureBox['look']): PictureBox => box(116, 59, MIDDLE, 'track 4', look);
const input = box(116, 59, MIDDLE, 'input 4', 'plain');

const HIGH = 1 + BOX / 2;
const LOW = HEIGHT - HIGH;
const pair = [performer(HIGH, 'Emil'), performer(LOW, 'Zuzu'), track('full')];
const pairLines = `M49 ${HIGH}H${JOIN}V${LOW}H49M${JOIN} ${MIDDLE}H116`;
const alone = `M49 ${MIDDLE}H116`;

/** The states that Help draws. */
export const TRACK_PICTURES = {
  single: { boxes: [performer(MIDDLE, 'Emil'), track('full')], lines: alone },
  // Tied together: two bars with rungs.
  gang: {
    boxes: pair,
    lines: pairLines,
    sign: `M${JOIN - 3} ${HIGH}V${LOW}M${JOIN + 3} ${HIGH}V${LOW}M${JOIN - 3} ${MIDDLE - 6}h6m0 12h-6`,
  },
  clash: {
    boxes: pair,
    lines: pairLines,
    sign: `M${JOIN} ${HIGH}l6 5 -12 8 12 8 -6 9`,
  },
  muted: {
    boxes: [performer(MIDDLE, 'Emil'), track('plain')],
    lines: alone,
    sign: `M${JOIN - 8} ${MIDDLE + 11}l16 -22`,
  },
  broken: {
    boxes: [performer(MIDDLE, 'Emil'), track('missing')],
    lines: `M49 ${MIDDLE}H70M98 ${MIDDLE}H116`,
    sign: `M${JOIN - 6} ${MIDDLE - 6}l12 12m0 -12l-12 12`,
  },
  free: { boxes: [box(1, 48, MIDDLE, '', 'missing'), input], lines: `M106 ${MIDDLE}H116` },
  idle: {
    boxes: [box(1, 48, MIDDLE, '', 'missing'), box(62, 36, MIDDLE, 'A2', 'plain'), input],
    lines: `M98 ${MIDDLE}H116`,
  },
  reserved: { boxes: [box(1, 78, MIDDLE, 'timecode', 'plain'), input], lines: `M79 ${MIDDLE}H116` },
} as const satisfies Record<string, TrackPicture>;

export interface StripTake {
  readonly x: number;
  readonly width: number;
  readonly text: string;
}

export const STRIP_WIDTH = 320;
export const STRIP_HEIGHT = 62;
/** The line of the day on the strip. */
export const STRIP_LINE = 46;

/** The last takes of a day on a line, the mark before the first of them. */
export const STRIP: { readonly takes: readonly StripTake[]; readonly markX: number; readonly nowX: number } =
  {
    takes: ['44/1', '44/2', '44/3'].map((text, at) => ({ x: 62 + at * 84, width: 48, text })),
    markX: 34,
    nowX: 300,
  };
