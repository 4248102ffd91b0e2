import type { Carrier, Guards } from '../carrier.ts';

/** The positions a set may use, and the carriers it must be clean with. */
export interface SetSpace {
  /** Ascending; each is clean on its own with the fixed carriers. */
  readonly khz: Int32Array;
  /** `firstAt[k]` is the first position at or above `khz[0] + k`. */
  readonly firstAt: Int32Array;
  readonly guards: Guards;
  readonly spacingKhz: number;
  readonly fixed: readonly Carrier[];
}

export function spaceOf(
  positionsKhz: readonly number[],
  guards: Guards,
  spacingKhz: number,
  fixed: readonly Carrier[],
): SetSpace {
  const khz = Int32Array.from(positionsKhz).sort();
  const base = khz[0] ?? 0;
  const firstAt = new Int32Array((khz[khz.length - 1] ?? 0) - base + 1);
  let next = 0;
  for (let cell = 0; cell < firstAt.length; cell += 1) {
    if (khz[next]! < base + cell) next += 1;
    firstAt[cell] = next;
  }
  return { khz, firstAt, guards, spacingKhz, fixed };
}

/** Steps left; a step is one position ruled out. It replaces a clock, so speed changes no result. */
export interface Budget {
  left: number;
}

/** The carriers a set builds on: the fixed ones, then the chosen ones, which transmit and are received. */
export interface Members {
  readonly khz: Int32Array;
  readonly transmits: Uint8Array;
  readonly listens: Uint8Array;
  count: number;
}

export function membersOf(space: SetSpace, room: number): Members {
  const active = space.fixed.filter(({ victim, transmitting }) => victim || transmitting);
  const members: Members = {
    khz: new Int32Array(active.length + room),
    transmits: new Uint8Array(active.length + room).fill(1),
    listens: new Uint8Array(active.length + room).fill(1),
    count: active.length,
  };
  active.forEach(({ khz, transmitting, victim }, at) => {
    members.khz[at] = khz;
    members.transmits[at] = transmitting ? 1 : 0;
    members.listens[at] = victim ? 1 : 0;
  });
  return members;
}

/** Blocks every position above `aboveKhz` whose multiple is within the guard of a centre. */
function blockNear(
  { khz, firstAt }: SetSpace,
  blocked: Uint8Array,
  aboveKhz: number,
  scale: number,
  centre: number,
  guard: number,
): void {
  const base = khz[0]!;
  const top = Math.ceil((centre + guard) / scale) - 1;
  if (top <= aboveKhz || top < base) return;
  const bottom = Math.floor((centre - guard) / scale) + 1;
  const cell = (bottom > aboveKhz ? bottom : aboveKhz + 1) - base;
  if (cell >= firstAt.length) return;
  for (let at = firstAt[Math.max(cell, 0)]!; at < khz.length && khz[at]! <= top; at += 1) blocked[at] = 1;
}

/**
 * Chooses x: blocks every position y above `aboveKhz` that would make a hit with x and one or two members,
 * then makes x a member. As for a single new carrier, who can be the victim decides which members count.
 */
export function choose(
  space: SetSpace,
  members: Members,
  blocked: Uint8Array,
  x: number,
  aboveKhz: number,
  budget: Budget,
): void {
  const { guards, spacingKhz } = space;
  blockNear(space, blocked, aboveKhz, 1, x, Math.max(spacingKhz, 1));
  if (guards.twoToneThirdKhz > 0) blockTwoTone(space, members, blocked, x, aboveKhz);
  if (guards.threeToneThirdKhz > 0) blockThreeTone(space, members, blocked, x, aboveKhz);
  if (guards.twoToneFifthKhz > 0) blockFifth(space, members, blocked, x, aboveKhz);
  budget.left -= 2 + members.count * (members.count + 6);
  members.khz[members.count] = x;
  members.transmits[members.count] = 1;
  members.listens[members.count] = 1;
  members.count += 1;
}

function blockTwoTone(
  space: SetSpace,
  members: Members,
  blocked: Uint8Array,
  x: number,
  above: number,
): void {
  const guard = space.guards.twoToneThirdKhz;
  for (let at = 0; at < members.count; at += 1) {
    const u = members.khz[at]!;
    blockNear(space, blocked, above, 2, x + u, guard);
    blockNear(space, blocked, above, 1, 2 * x - u, guard);
    if (members.transmits[at] === 1) blockNear(space, blocked, above, 1, 2 * u - x, guard);
  }
}

function blockThreeTone(
  space: SetSpace,
  members: Members,
  blocked: Uint8Array,
  x: number,
  above: number,
): void {
  const guard = space.guards.threeToneThirdKhz;
  const { khz, transmits, count } = members;
  for (let at = 0; at < count; at += 1)
    for (let other = at + 1; other < count; other += 1) {
      if (transmits[at] === 0 && transmits[other] === 0) continue;
      const u = khz[at]!;
      const v = khz[other]!;
      blockNear(space, blocked, above, 1, x + u - v, guard);
      blockNear(space, blocked, above, 1, x + v - u, guard);
      blockNear(space, blocked, above, 1, u + v - x, guard);
    }
}

/**
 * 3A-2B near D with x, y and one member u in every order: u is a source only if it transmits, the victim only
 * if it is received.
 */
function blockFifth(space: SetSpace, members: Members, blocked: Uint8Array, x: number, above: number): void {
  const guard = space.guards.twoToneFifthKhz;
  for (let at = 0; at < members.count; at += 1) {
    const u = members.khz[at]!;
    if (members.transmits[at] === 1) {
      blockNear(space, blocked, above, 1, 3 * x - 2 * u, guard);
      blockNear(space, blocked, above, 1, 3 * u - 2 * x, guard);
      blockNear(space, blocked, above, 2, 3 * u - x, guard);
      blockNear(space, blocked, above, 3, 2 * u + x, guard);
    }
    if (members.listens[at] === 1) {
      blockNear(space, blocked, above, 2, 3 * x - u, guard);
      blockNear(space, blocked, above, 3, 2 * x + u, guard);
    }
  }
}
