import { type DayId, type Envelope, idText, isEnvelope } from '../facts/kinds/envelope.ts';
import { storedForm } from '../facts/stored.ts';
import { fail, ok, type Result } from '../shared/result.ts';

/** Facts on their way from one phone to another. */
export interface Parcel {
  readonly day: DayId;
  readonly title: string;
  /** Who holds the phone that gives them; empty if nobody said. */
  readonly sender: string;
  readonly facts: readonly Envelope[];
}

/** Makes text small and big again: the platform's stream, or Node's. */
export interface Packing {
  pack(text: string): Promise<Uint8Array>;
  /** Null for what is not packed text, or longer than `most` bytes. */
  unpack(bytes: Uint8Array, most: number): Promise<string | null>;
}

const VERSION = 1;
/** Above what a day may hold (`ADMIT_LIMITS`); whatever the packed bytes claim, no more is unpacked. */
const MOST_TEXT = 40_000_000;
const LONGEST = 200;

export function packParcel(packing: Packing, { day, title, sender, facts }: Parcel): Promise<Uint8Array> {
  const head = [VERSION, day, title.slice(0, LONGEST), sender.slice(0, LONGEST)];
  const lines = [head, ...facts.map(storedForm)].map((line) => JSON.stringify(line));
  return packing.pack(lines.join('\n'));
}

/** Fails with `codes-damaged`, or `codes-newer` for the form of a later version. */
export async function unpackParcel(packing: Packing, bytes: Uint8Array): Promise<Result<Parcel>> {
  const text = await packing.unpack(bytes, MOST_TEXT);
  const [head, ...facts] = text === null ? [] : linesIn(text);
  if (!Array.isArray(head)) return fail({ code: 'codes-damaged' });
  const [version, day, title, sender] = head as unknown[];
  if (typeof version === 'number' && version > VERSION) return fail({ code: 'codes-newer' });
  const isText = (value: unknown): value is string => typeof value === 'string' && value.length <= LONGEST;
  const isHead = idText.safeParse(day).success && isText(title) && isText(sender);
  if (!isHead || !facts.every((fact) => isEnvelope(fact) && fact.day === day))
    return fail({ code: 'codes-damaged' });
  return ok({ day: day as DayId, title, sender, facts: facts as Envelope[] });
}

/** Nothing if any line is not JSON. */
function linesIn(text: string): unknown[] {
  try {
    return text.split('\n').map((line) => JSON.parse(line) as unknown);
  } catch {
    return [];
  }
}
