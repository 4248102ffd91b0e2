import type * as z from 'zod/mini';

/** Turns the body of one version of a kind into the next version's. */
export type Lift = (old: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/**
 * A kind of fact. Shapes only grow: `lifts[n]` turns a body of version n into version n + 1 when it is read;
 * what is stored is never rewritten.
 */
export interface Kind<Name extends string, Body extends z.ZodMiniType> {
  readonly name: Name;
  readonly version: number;
  readonly body: Body;
  readonly lifts: Readonly<Record<number, Lift>>;
  /** Makes what only a newer version can say, in a fact that says more than that, into what this one can hold. */
  readonly newer: Lift;
}

export const kind = <Name extends string, Body extends z.ZodMiniType>(
  name: Name,
  body: Body,
  version = 1,
  lifts: Readonly<Record<number, Lift>> = {},
  newer: Lift = (read) => read,
): Kind<Name, Body> => ({ name, body, version, lifts, newer });
