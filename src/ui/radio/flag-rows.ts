import { labelRows, type PlacedLabel } from '../../radio/spectrum/label-rows.ts';

export interface Flag {
  /** Where its line stands. */
  readonly xPx: number;
  readonly widthPx: number;
}

const GAP_PX = 6;
/** More would be a picture of names and not of frequencies. */
const MOST_ROWS = 10;

/**
 * Names as flags: each begins at its own line and flies to the right, above the names of the lines that it
 * passes, so that no line runs through a name. At the right edge a name moves left to stay inside. Where that
 * would be too high, names are centred over their lines and take the lowest free row.
 */
export function flagRows(flags: readonly Flag[], widthPx: number): readonly PlacedLabel[] {
  const placed: (PlacedLabel & Flag)[] = [];
  const fromTheRight = flags.map((_, at) => at).sort((a, b) => flags[b]!.xPx - flags[a]!.xPx || b - a);
  const rows: PlacedLabel[] = [];
  for (const at of fromTheRight) {
    const flag = flags[at]!;
    const leftPx = Math.max(0, Math.min(flag.xPx, widthPx - flag.widthPx));
    const isUnder = (other: PlacedLabel & Flag): boolean =>
      other.leftPx < leftPx + flag.widthPx + GAP_PX && leftPx < other.leftPx + other.widthPx + GAP_PX;
    const row = 1 + Math.max(-1, ...placed.filter(isUnder).map((other) => other.row));
    rows[at] = { leftPx, row };
    placed.push({ ...flag, leftPx, row });
  }
  if (rows.every(({ row }) => row < MOST_ROWS)) return rows;
  const centred = flags.map(({ xPx, widthPx: width }) => ({ middlePx: xPx, widthPx: width }));
  return labelRows(centred, widthPx, GAP_PX);
}
