// The kinds of connectors: what the app knows of each is its entry here, and the compiler asks for all of it, and for
// its word in ui/rig/words.ts. Common practice, no source.

interface Input {
  /** What inputs of this kind are called, before their number. */
  readonly called: string;
  /** What people call them where they describe a recorder, in small letters. */
  readonly typed: RegExp;
  /** Whether the lead of a hardline voice is planned into it, is only offered to be plugged by hand, or finds no socket. */
  readonly hardline: 'planned' | 'offered' | 'never';
  /** Whether inputs of this kind may be planned onto one track, because recorders have more of them than tracks. */
  readonly sharesTrack: boolean;
  /** How a lead into it is made off as long as nobody has said it; null where that does not follow. */
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
  /** The inputs that it fits, 1 the likeliest. */
  readonly into: Readonly<Record<InputKind, number | false>>;
  /** Whether its lead can be plugged somewhere else: an internal receiver stays in its slot. */
  readonly canMove: boolean;
  /** How its lead is made off as long as nobody has said it; null where that does not follow. */
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

/** What is known of an input's kind; nothing of one that was never said. */
export const inputOf = (kind: string | undefined): Input | undefined =>
  kind !== undefined && Object.hasOwn(INPUTS, kind) ? INPUTS[kind as InputKind] : undefined;

export const outputOf = (kind: string | undefined): Output | undefined =>
  kind !== undefined && Object.hasOwn(OUTPUTS, kind) ? OUTPUTS[kind as OutputKind] : undefined;

/** The kinds of inputs that outputs of this kind fit, likeliest first. */
export function inputsFitting(kind: string | undefined): InputKind[] {
  const into = outputOf(kind)?.into;
  if (!into) return [];
  return INPUT_KINDS.filter((input) => into[input] !== false).sort(
    (a, b) => Number(into[a]) - Number(into[b]),
  );
}
