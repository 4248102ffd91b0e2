/** Sizes and positions are in points (1/72 inch), from the upper left corner. */
export interface Paper {
  readonly width: number;
  readonly height: number;
}

export const PAPERS = {
  // ISO 216: 210 × 297 mm.
  a4: { width: 595.28, height: 841.89 },
  // ANSI/ASME Y14.1, size A: 8.5 × 11 inches.
  letter: { width: 612, height: 792 },
} as const satisfies Record<string, Paper>;
export type PaperId = keyof typeof PAPERS;

export const MARGIN = { left: 48, right: 48, top: 50, bottom: 52 } as const;

export type Weight = 'regular' | 'bold';

/** Ink on warm paper; every grey is still readable on a poor copy. */
export type Ink = 'ink' | 'soft' | 'line' | 'band' | 'paper';
export const INKS: Readonly<Record<Ink, readonly [red: number, green: number, blue: number]>> = {
  ink: [26, 24, 20],
  soft: [105, 98, 86],
  line: [188, 180, 164],
  band: [234, 230, 218],
  paper: [255, 255, 255],
};

export interface Style {
  readonly size: number;
  readonly weight: Weight;
  readonly ink: Ink;
}

const style = (size: number, weight: Weight = 'regular', ink: Ink = 'ink'): Style => ({ size, weight, ink });

export const STYLES = {
  title: style(21, 'bold'),
  subtitle: style(10.5),
  section: style(10.5, 'bold'),
  label: style(6.6, 'regular', 'soft'),
  value: style(9),
  strong: style(9, 'bold'),
  small: style(7.8),
  smallBold: style(7.8, 'bold'),
  soft: style(7.8, 'regular', 'soft'),
  foot: style(7, 'regular', 'soft'),
} as const;
