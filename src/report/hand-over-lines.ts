import type { Day } from '../day/model.ts';
import { type HandedOver, handOversOf } from '../day/wrap/hand-over.ts';
import { cleanLine } from './clean-text.ts';

/** Cards or drives that went to somebody, as the report prints it. Texts are clean, and empty if not entered. */
export interface HandOverLine extends Pick<HandedOver, 'at' | 'zone' | 'checked'> {
  readonly carriers: readonly { readonly name: string; readonly copies: number }[];
  readonly to: string;
  readonly role: string;
  readonly files: number | null;
  readonly bytes: number | null;
  /** See `shared/strokes.ts`. */
  readonly strokes: string;
  readonly typed: string;
}

export const handOverLines = (day: Day): HandOverLine[] =>
  handOversOf(day).map(({ at, zone, checked, carriers, to, role = '', files, bytes, signature }) => ({
    ...{ at, zone, checked },
    carriers: carriers.map(({ name, copies = 0 }) => ({ name: cleanLine(name), copies })),
    to: cleanLine(to),
    role: cleanLine(role),
    files: files ?? null,
    bytes: bytes ?? null,
    strokes: signature?.strokes ?? '',
    typed: cleanLine(signature?.typed ?? ''),
  }));
