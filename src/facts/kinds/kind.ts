import type * as z from 'zod/mini';

/** Turns a body of one version into the next version's. */
export type Lift = (old: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/**
 * A kind of fact. Shapes only grow: `lifts[n]` turns a body of version n into version n + 1 on reading;
 * stored facts are never rewritten.
 */
export interface Kind<Name extends string, Body extends z.ZodMiniType> {
  readonly name: Name;
  readonly version: number;
  readonly body: Body;
  readonly lifts: Readonly<Record<number, Lift>>;
  /**
   * Replaces content that only a newer version knows with something this version can hold, if the rest of the
   * fact still makes sense.
   */
  readonly newer: Lift;
}

export const kind = <Name extends string, Body extends z.ZodMiniType>(
  name: Name,
  body: Body,
  version = 1,
  lifts: Readonly<Record<number, Lift>> = {},
  newer: Lift = (read) => read,
): Kind<Name, Body> => ({ name, body, version, lifts, newer });
