import type { Recorder } from '../../day/recorders/rolling.ts';
import type { SnakeSignal } from '../../facts/kinds/runs-described.ts';
import type { Problem } from '../../shared/result.ts';
import { byName } from '../due-action.ts';
import { type CircuitPins, SNAKE_AES3_NAMES, snakePins, XLR_PINS } from './snake-pins.ts';

/** How a lead is wired: one XLR pair, a circuit (1 to 8) of a named 25-pin snake, or other words. */
export type LeadEnds =
  | { readonly kind: 'xlr' }
  | {
      readonly kind: 'snake';
      readonly snake: string;
      readonly circuit: number;
      readonly carries: SnakeSignal;
    }
  | { readonly kind: 'other'; readonly words: string };

/** A lead of the rig; with a selector, the position in which it reaches its input. */
export interface RigLead {
  readonly output: string;
  readonly lead: string;
  readonly ends: LeadEnds;
  readonly input: string;
  /** Whose input it is, where several recorders have some. */
  readonly recorder?: Recorder;
  readonly selector?: { readonly name: string; readonly position: string };
}

export interface WiringRow {
  readonly output: string;
  readonly lead: string;
  readonly input: string;
  /** The snake and its circuit, such as `A 3` or `A 5 out 1/2`. */
  readonly circuit?: string;
  readonly pins?: CircuitPins;
  readonly words?: string;
  readonly recorder?: Recorder;
  readonly selector?: RigLead['selector'];
}

export interface WiringSheet {
  readonly rows: readonly WiringRow[];
  readonly problems: readonly Problem[];
}

/**
 * The sheet for the lid: one row per lead in the given order, pin by pin where known, and errors in the
 * drawing: no such circuit, one circuit used twice, one input reached twice without a selector.
 */
export function wiringSheet(leads: readonly RigLead[]): WiringSheet {
  return {
    rows: leads.map(rowOf),
    problems: [
      ...leads.flatMap(({ ends }) => {
        const pins = ends.kind === 'snake' ? snakePins(ends.circuit) : undefined;
        return pins && !pins.ok ? [pins.problem] : [];
      }),
      ...circuitsUsedTwice(leads),
      ...inputsReachedTwice(leads),
    ],
  };
}

function rowOf({ output, lead, ends, input, recorder, selector }: RigLead): WiringRow {
  const base = { output, lead, input, ...(recorder && { recorder }), ...(selector && { selector }) };
  if (ends.kind === 'xlr') return { ...base, pins: XLR_PINS };
  if (ends.kind === 'other') return { ...base, words: ends.words };
  const pins = snakePins(ends.circuit);
  if (!pins.ok) return base;
  const digital = ends.carries === 'aes3' ? ` ${SNAKE_AES3_NAMES[ends.circuit - 1]}` : '';
  return { ...base, circuit: `${ends.snake} ${ends.circuit}${digital}`, pins: pins.value };
}

function circuitsUsedTwice(leads: readonly RigLead[]): readonly Problem[] {
  const groups = groupBy(leads, ({ ends }) =>
    ends.kind === 'snake' ? JSON.stringify([ends.snake, ends.circuit]) : undefined,
  );
  return groups
    .filter(({ length }) => length > 1)
    .map((group) => {
      const ends = group[0]!.ends as LeadEnds & { kind: 'snake' };
      const names = group.map(({ lead }) => lead).sort(byName);
      return { code: 'circuit-used-twice', snake: ends.snake, circuit: ends.circuit, leads: names };
    });
}

function inputsReachedTwice(leads: readonly RigLead[]): readonly Problem[] {
  const groups = groupBy(leads, ({ input, recorder }) => JSON.stringify([recorder?.id, input]));
  return groups
    .filter((group) => group.length > 1 && !isSelected(group))
    .map((group) => ({
      code: 'input-reached-twice',
      input: inputName(group[0]!),
      leads: group.map(({ lead }) => lead).sort(byName),
    }));
}

/** An input's name, after its recorder's where there are several. */
export const inputName = ({
  input,
  recorder,
}: {
  readonly input: string;
  readonly recorder?: Recorder | undefined;
}): string => (recorder ? `${recorder.name} ${input}` : input);

/** Every lead of the group goes through one selector, each in its own position. */
function isSelected(group: readonly RigLead[]): boolean {
  const names = new Set(group.map(({ selector }) => selector?.name));
  const positions = new Set(group.map(({ selector }) => selector?.position));
  return names.size === 1 && !names.has(undefined) && positions.size === group.length;
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string | undefined): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()];
}
