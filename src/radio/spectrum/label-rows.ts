export interface Label {
  /** The preferred centre of the label. */
  readonly middlePx: number;
  readonly widthPx: number;
}

export interface PlacedLabel {
  readonly leftPx: number;
  readonly row: number;
}

/**
 * Puts labels above a line without overlaps: each stays inside the picture and takes the lowest free row.
 * Returned in the given order. `labelRows([two labels at 50 px, 40 px wide], 100, 4)` → rows 0 and 1
 */
export function labelRows(labels: readonly Label[], widthPx: number, gapPx: number): readonly PlacedLabel[] {
  const lefts = labels.map((label) =>
    Math.max(0, Math.min(label.middlePx - label.widthPx / 2, widthPx - label.widthPx)),
  );
  const order = labels.map((_, at) => at).sort((a, b) => lefts[a]! - lefts[b]! || a - b);
  const freeFrom: number[] = [];
  const rows = labels.map(() => 0);
  for (const at of order) {
    const free = freeFrom.findIndex((from) => from <= lefts[at]!);
    const row = free < 0 ? freeFrom.length : free;
    rows[at] = row;
    freeFrom[row] = lefts[at]! + labels[at]!.widthPx + gapPx;
  }
  return labels.map((_, at) => ({ leftPx: lefts[at]!, row: rows[at]! }));
}
