import { exponentOf, figure, type Growth, type Series, sizesOf } from './series.ts';

const PANEL = { width: 420, height: 310, left: 48, right: 20, top: 40, bottom: 104 };
const LEGEND = { top: 36, line: 15, sample: 34 };
const COLUMNS = 2;
/** Dashes tell the lines apart, and each stands beside its name: colour says nothing alone. */
const DASHES = ['', '6 3', '2 3', '9 3 2 3'];

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Whole decades around all values of a panel. */
function decades(values: readonly number[]): { from: number; to: number } {
  const from = Math.floor(Math.log10(Math.min(...values)));
  return { from, to: Math.max(from + 1, Math.ceil(Math.log10(Math.max(...values)))) };
}

function panel({ of, with: held, series }: Growth, at: number): string {
  const { width, height, left, right, top, bottom } = PANEL;
  const sizes = sizesOf(series);
  const costs = decades(series.flatMap(({ points }) => points.map(({ cost }) => cost)));
  const [least, most] = [Math.log10(sizes[0]!), Math.log10(sizes.at(-1)!)];
  const x = (size: number) => left + ((Math.log10(size) - least) / (most - least)) * (width - left - right);
  const y = (cost: number) =>
    height - bottom - ((Math.log10(cost) - costs.from) / (costs.to - costs.from)) * (height - top - bottom);
  const marks = Array.from({ length: costs.to - costs.from + 1 }, (_, step) => 10 ** (costs.from + step));
  const grid = marks.map(
    (cost) =>
      `<line x1="${left}" x2="${width - right}" y1="${y(cost).toFixed(1)}" y2="${y(cost).toFixed(1)}" stroke="#d8d2c4"/>` +
      `<text x="${left - 6}" y="${(y(cost) + 4).toFixed(1)}" text-anchor="end">${figure(cost)}</text>`,
  );
  const below = sizes.map(
    (size) =>
      `<text x="${x(size).toFixed(1)}" y="${height - bottom + 16}" text-anchor="middle">${size.toLocaleString('en-GB')}</text>`,
  );
  const lines = series.map((one, number) => line(one, number, x, y) + named(one, number));
  return (
    `<g transform="translate(${(at % COLUMNS) * width} ${Math.floor(at / COLUMNS) * height})">` +
    `<text x="${left}" y="16" font-weight="bold">${escaped(of)}</text>` +
    `<text x="${left}" y="30" fill="#5d574b">${escaped(held)}</text>` +
    `${grid.join('')}${below.join('')}${lines.join('')}</g>`
  );
}

function line(one: Series, number: number, x: (size: number) => number, y: (cost: number) => number): string {
  const path = one.points.map(({ size, cost }) => `${x(size).toFixed(1)},${y(cost).toFixed(1)}`).join(' ');
  return `<polyline points="${path}" ${strokeOf(number)}/>`;
}

const strokeOf = (number: number): string =>
  `fill="none" stroke="#17171a" stroke-width="1.6" stroke-dasharray="${DASHES[number % DASHES.length]}"`;

/** Under the chart: the dashes, the work, what it costs at the largest size, and how it grows. */
function named(one: Series, number: number): string {
  const { height, left, bottom } = PANEL;
  const y = height - bottom + LEGEND.top + number * LEGEND.line;
  const last = figure(one.points.at(-1)!.cost);
  return (
    `<line x1="${left}" x2="${left + LEGEND.sample}" y1="${y - 4}" y2="${y - 4}" ${strokeOf(number)}/>` +
    `<text x="${left + LEGEND.sample + 8}" y="${y}">${escaped(one.work)}: ${last} ${one.unit}, exponent ${exponentOf(one).toFixed(1)}</text>`
  );
}

/** Small charts side by side, both scales in tens: a line that rises by one square a square grows as the size does. */
export function growthPicture(all: readonly Growth[]): string {
  const width = PANEL.width * COLUMNS;
  const height = PANEL.height * Math.ceil(all.length / COLUMNS);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="11" fill="#17171a">` +
    `<title>How cost grows</title><rect width="${width}" height="${height}" fill="#fbf9f3"/>${all.map(panel).join('')}</svg>\n`
  );
}
