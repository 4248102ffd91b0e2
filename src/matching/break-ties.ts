import type { DenseMatching } from './dense-matching.ts';

/** Sets of columns, 32 to a word. Reused by the next call, and enlarged if needed. */
let room = makeRoom(0, 0);

function makeRoom(rows: number, words: number) {
  return {
    words,
    /** For each row the columns it pairs with without slack; after the last row those of price zero. */
    tight: new Int32Array((rows + 1) * words),
    /** Columns of undecided rows, and free ones. */
    open: new Int32Array(words),
    /** Of those, the ones the search has not visited. */
    unseen: new Int32Array(words),
    queue: new Int32Array(words * 32),
    /** The column whose row moves to this one. */
    cameFrom: new Int32Array(words * 32),
  };
}

/**
 * Visits the rows in order and gives each the lowest column that some optimum gives it. Optima are exactly
 * the assignments along tight pairs that leave only columns of price zero free. So a row may take another
 * tight column if its owner can move to one, and so on, until somebody takes the column that the row gives
 * up. Free columns belong to one extra row, for which every column of price zero is tight.
 */
export function breakTies(solver: DenseMatching, costs: Float64Array, rows: number, width: number): void {
  const words = (width + 31) >> 5;
  if (room.tight.length < (rows + 1) * words || room.words < words) room = makeRoom(rows, words);
  const { open } = room;
  for (let word = 0; word < words; word += 1) open[word] = wordOfFirst(width, word);
  findTight(solver, costs, rows, width);
  for (let row = 0; row < rows; row += 1) {
    const home = solver.columnOf[row]!;
    const lowest = lowestInExchange(solver, row, rows, words);
    if (lowest >= 0) exchange(solver, row, lowest, home);
    const taken = solver.columnOf[row]!;
    open[taken >> 5]! &= ~(1 << taken);
  }
}

/** Word number `word` of the set of the first `count` columns. */
const wordOfFirst = (count: number, word: number): number =>
  count >= (word + 1) * 32 ? -1 : count <= word * 32 ? 0 : ~(-1 << count);

const lowestOf = (bits: number): number => 31 - Math.clz32(bits & -bits);

function findTight(
  { columnOf, columnPrice }: DenseMatching,
  costs: Float64Array,
  rows: number,
  width: number,
): void {
  const { tight } = room;
  const words = (width + 31) >> 5;
  // Two rows at a time, to read the column prices once for both; a last odd one is done twice.
  for (let one = 0; one < rows; one += 2) {
    const two = Math.min(one + 1, rows - 1);
    const oneRow = one * width;
    const twoRow = two * width;
    const onePrice = costs[oneRow + columnOf[one]!]! - columnPrice[columnOf[one]!]!;
    const twoPrice = costs[twoRow + columnOf[two]!]! - columnPrice[columnOf[two]!]!;
    for (let word = 0, column = 0; word < words; word += 1) {
      let ofOne = 0;
      let ofTwo = 0;
      for (const end = Math.min(column + 32, width); column < end; column += 1) {
        const price = columnPrice[column]!;
        if (costs[oneRow + column]! - onePrice === price) ofOne |= 1 << column;
        if (costs[twoRow + column]! - twoPrice === price) ofTwo |= 1 << column;
      }
      tight[one * words + word] = ofOne;
      tight[two * words + word] = ofTwo;
    }
  }
  if (rows === width) return;
  tight.fill(0, rows * words, (rows + 1) * words);
  for (let column = 0; column < width; column += 1)
    if (columnPrice[column] === 0) tight[rows * words + (column >> 5)]! |= 1 << column;
}

/** The lowest column below its own that the row can have; -1 for none. */
function lowestInExchange(solver: DenseMatching, row: number, rows: number, words: number): number {
  const { tight, open, unseen } = room;
  const home = solver.columnOf[row]!;
  let isFirst = true;
  for (let word = 0; word <= home >> 5; word += 1) {
    const wanted = tight[row * words + word]! & wordOfFirst(home, word);
    for (let bits = wanted & open[word]!; bits !== 0; bits = wanted & unseen[word]!) {
      if (isFirst) for (let each = 0; each < words; each += 1) unseen[each] = open[each]!;
      isFirst = false;
      const column = word * 32 + lowestOf(bits);
      if (leadsTo(home, column, solver.rowOf, rows, words)) return column;
    }
  }
  return -1;
}

/** Whether owners of columns can move on, from this one, until somebody takes the column `home`. */
function leadsTo(home: number, start: number, rowOf: Int32Array, rows: number, words: number): boolean {
  const { tight, unseen, queue, cameFrom } = room;
  unseen[start >> 5]! &= ~(1 << start);
  queue[0] = start;
  for (let at = 0, length = 1; at < length; at += 1) {
    const column = queue[at]!;
    const base = (rowOf[column]! < 0 ? rows : rowOf[column]!) * words;
    if ((tight[base + (home >> 5)]! & (1 << home)) !== 0) {
      cameFrom[home] = column;
      return true;
    }
    for (let word = 0; word < words; word += 1) {
      let bits = tight[base + word]! & unseen[word]!;
      unseen[word]! &= ~bits;
      for (; bits !== 0; bits &= bits - 1) {
        const next = word * 32 + lowestOf(bits);
        cameFrom[next] = column;
        queue[length++] = next;
      }
    }
  }
  return false;
}

function exchange({ columnOf, rowOf }: DenseMatching, row: number, lowest: number, home: number): void {
  const { cameFrom } = room;
  for (let column = home; column !== lowest; ) {
    const from = cameFrom[column]!;
    const mover = rowOf[from]!;
    rowOf[column] = mover;
    if (mover >= 0) columnOf[mover] = column;
    column = from;
  }
  rowOf[lowest] = row;
  columnOf[row] = lowest;
}
