import { fail, ok, type Result } from '../shared/result.ts';

/** The three pins of one balanced circuit. */
export interface CircuitPins {
  readonly plus: number;
  readonly minus: number;
  readonly screen: number;
}

const circuit = (plus: number, minus: number, screen: number): CircuitPins => ({ plus, minus, screen });

/** The 25-pin D-sub of AES59, analogue: channels 1 to 8 in order. Pin 13 is not connected. */
export const SNAKE_CIRCUITS: readonly CircuitPins[] = [
  circuit(24, 12, 25),
  circuit(10, 23, 11),
  circuit(21, 9, 22),
  circuit(7, 20, 8),
  circuit(18, 6, 19),
  circuit(4, 17, 5),
  circuit(15, 3, 16),
  circuit(1, 14, 2),
];

/**
 * What the same eight circuits carry as AES3: four pairs in, then four pairs out, as the box sees them. The last
 * four are from memory. An older layout numbers its pins otherwise: ask which before wiring.
 */
export const SNAKE_AES3_NAMES: readonly string[] = [
  'in 1/2',
  'in 3/4',
  'in 5/6',
  'in 7/8',
  'out 1/2',
  'out 3/4',
  'out 5/6',
  'out 7/8',
];

export const UNCONNECTED_PIN = 13;

/** The 3-pin XLR (AES14-1992): 1 screen, 2 plus, 3 minus. */
export const XLR_PINS: CircuitPins = circuit(2, 3, 1);

/** The pins of circuit 1 to 8. Example: 8 is plus 1, minus 14, screen 2. */
export function snakePins(number: number): Result<CircuitPins> {
  const found = SNAKE_CIRCUITS[number - 1];
  return found ? ok(found) : fail({ code: 'no-such-circuit', circuit: String(number) });
}

export type PinFault =
  | { readonly code: 'pin-used-twice'; readonly pin: number }
  | { readonly code: 'pin-missing'; readonly pin: number }
  | { readonly code: 'pin-out-of-place'; readonly pin: number };

/**
 * What is wrong with a wired table: eight circuits must use every pin from 1 to 25 once, but for 13. Empty when
 * it is sound. It finds a slip of the pen, not two circuits swapped.
 */
export function pinFaults(circuits: readonly CircuitPins[]): readonly PinFault[] {
  const used = circuits.flatMap(({ plus, minus, screen }) => [plus, minus, screen]);
  const wanted = Array.from({ length: 25 }, (_, at) => at + 1).filter((pin) => pin !== UNCONNECTED_PIN);
  return [
    ...[...new Set(used)]
      .filter((pin) => used.indexOf(pin) !== used.lastIndexOf(pin))
      .map((pin) => ({ code: 'pin-used-twice', pin }) as const),
    ...wanted.filter((pin) => !used.includes(pin)).map((pin) => ({ code: 'pin-missing', pin }) as const),
    ...[...new Set(used)]
      .filter((pin) => !wanted.includes(pin))
      .map((pin) => ({ code: 'pin-out-of-place', pin }) as const),
  ];
}

/**
 * The circuit at the far end of an AES3 lead between two boxes: outputs must reach inputs, so 1 goes to 5 and 5
 * to 1. A straight lead joins output to output. Example: 6 (out 3/4) reaches 2 (in 3/4).
 */
export function crossedCircuit(number: number): Result<number> {
  const pins = snakePins(number);
  return pins.ok ? ok(number > 4 ? number - 4 : number + 4) : pins;
}
