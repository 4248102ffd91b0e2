import { fail, ok, type Result } from '../../shared/result.ts';

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
 * What the same eight circuits carry as AES3: four pairs in, then four pairs out, as the box sees them. The
 * last four are from memory. An older layout numbers its pins differently: ask which before wiring.
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
