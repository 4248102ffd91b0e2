// Kinds of connectors. Each has its entry here; the compiler requires every property, and its word in
// ui/rig/words.ts. Common practice, no source.

interface Input {
  /** The name of such inputs, before their number. */
  readonly called: string;
  /** What people call them when they describe a recorder, in lower case. */
  readonly typed: RegExp;
  /** Whether a hardline's lead may be planned into it, is only offered by hand, or never fits. */
  readonly hardline: 'planned' | 'offered' | 'never';
  /** Whether several may be planned onto one track, since recorders have more of them than tracks. */
  readonly sharesTrack: boolean;
  /** The default wiring of a lead into it; null if there is none. */
  readonly madeOff: string | null;
}

const INSIDE = 'inside the recorder';

/** In the order in which they are listed and offered. */
export const INPUTS = {
  mic: {
    called: 'in',
    typed: /^(mics?( ?\/? ?lines?)?|xlrs?|inputs?|analogu?e?)( inputs?| ins?)?$|^ins?$/,
    hardline: 'planned',
    sharesTrack: false,
    madeOff: null,
  },
  line: {
    called: 'line',
    typed: /^lines?( inputs?| ins?)?$/,
    hardline: 'planned',
    sharesTrack: false,
    madeOff: null,
  },
  aes3: {
    called: 'AES',
    typed: /^(aes ?3?|digital)( channels?| inputs?| ins?)?$/,
    hardline: 'offered',
    sharesTrack: false,
    madeOff: null,
  },
  return: {
    called: 'return',
    typed: /^(returns?|rets?|rtns?)( inputs?| ins?)?$/,
    hardline: 'offered',
    sharesTrack: false,
    madeOff: null,
  },
  slot: {
    called: 'slot',
    typed: /^((internal )?slots?|internals?)( receivers?| channels?)?$/,
    hardline: 'never',
    sharesTrack: true,
    madeOff: INSIDE,
  },
  network: {
    called: 'net',
    typed: /^(networks?|net)( channels?| inputs?| ins?)?$/,
    hardline: 'offered',
    sharesTrack: false,
    madeOff: null,
  },
} as const satisfies Record<string, Input>;

export type InputKind = keyof typeof INPUTS;
export const INPUT_KINDS = Object.keys(INPUTS) as InputKind[];

interface Output {
  /** The inputs it fits, 1 the likeliest. */
  readonly into: Readonly<Record<InputKind, number | false>>;
  /** Whether its lead can be plugged elsewhere: an internal receiver stays in its slot. */
  readonly canMove: boolean;
  /** The default wiring of its lead; null if there is none. */
  readonly madeOff: string | null;
}

/** In the order in which they are listed. */
export const OUTPUTS = {
  analogue: {
    into: { line: 1, return: 2, mic: 3, aes3: false, slot: false, network: false },
    canMove: true,
    madeOff: null,
  },
  aes3: {
    into: { mic: false, line: false, aes3: 1, return: false, slot: false, network: false },
    canMove: true,
    madeOff: null,
  },
  network: {
    into: { mic: false, line: false, aes3: false, return: false, slot: false, network: 1 },
    canMove: true,
    madeOff: 'network route',
  },
  slot: {
    into: { mic: false, line: false, aes3: false, return: false, slot: 1, network: false },
    canMove: false,
    madeOff: INSIDE,
  },
} as const satisfies Record<string, Output>;

export type OutputKind = keyof typeof OUTPUTS;
export const OUTPUT_KINDS = Object.keys(OUTPUTS) as OutputKind[];

/** The entry of an input's kind; undefined if the kind is unknown or was never entered. */
export const inputOf = (kind: string | undefined): Input | undefined =>
  kind !== undefined && Object.hasOwn(INPUTS, kind) ? INPUTS[kind as InputKind] : undefined;

export const outputOf = (kind: string | undefined): Output | undefined =>
  kind !== undefined && Object.hasOwn(OUTPUTS, kind) ? OUTPUTS[kind as OutputKind] : undefined;

/** The kinds of inputs that such outputs fit, likeliest first. */
export function inputsFitting(kind: string | undefined): InputKind[] {
  const into = outputOf(kind)?.into;
  if (!into) return [];
  return INPUT_KINDS.filter((input) => into[input] !== false).sort(
    (a, b) => Number(into[a]) - Number(into[b]),
  );
}
