import * as z from 'zod/mini';
import { counterOf, databaseOf, type FactId, isFactId } from '../../shared/ids.ts';

/** A shooting day is a label the mixer picks, never derived from a clock: nights run past midnight. */
export type DayId = string;
export type TakeId = FactId;
export type VoiceId = string;
/** A part of the rig: recorder input, track, send, receiver, channel, output, selector, transmitter. */
export type PartId = string;
/** A transmitter of the rig, `recorder`, or anything else with cells or timecode. */
export type DeviceId = string;

export const text = (longest: number) => z.string().check(z.maxLength(longest));
export const shortText = text(200);
export const longText = text(4000);
export const idText = z.string().check(z.regex(/^[\w.:-]{1,64}$/));
export const factIdText = z.string().check(z.refine(isFactId, 'not an id of a fact'));
export const wholeNumber = (least: number, most: number) => z.int().check(z.gte(least), z.lte(most));

/** A measured or planned figure, bounds included. */
export const amount = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));

const LATEST_MS = 253_402_300_799_999;
export const momentMs = wholeNumber(0, LATEST_MS);

/**
 * Fields of every fact. `at` is UTC ms and `zone` minutes east of UTC when it was recorded; neither
 * determines order. `batch` is the id of the action's first fact. `before` places the fact just before a
 * take. `ahead`: the phone's clock was set ahead by so many ms since the same window's last action. `seen`:
 * the highest counter known of every other database at the time.
 */
export const envelope = z.object({
  id: factIdText,
  day: idText,
  kind: z.string().check(z.regex(/^[a-z][a-z-]{0,40}$/)),
  v: wholeNumber(1, 1000),
  at: wholeNumber(0, LATEST_MS),
  zone: wholeNumber(-900, 900),
  ahead: z.optional(wholeNumber(1, LATEST_MS)),
  batch: z.optional(factIdText),
  before: z.optional(factIdText),
  seen: z.optional(z.record(z.string().check(z.regex(/^[0-9a-z]{6}$/)), wholeNumber(0, 500_000_000))),
});

export type Envelope = z.infer<typeof envelope>;

export const isEnvelope = (raw: unknown): raw is Envelope => envelope.safeParse(raw).success;

/** The batch of a fact: one user action, one transaction, one undo step. */
export const batchOf = (fact: Envelope): FactId => fact.batch ?? fact.id;

/**
 * Whether the author of one fact knew of another. Windows of one phone share a database, so there the order
 * of ids decides; of other databases a fact knows what `seen` covers.
 */
export const knew = ({ id, seen }: Pick<Envelope, 'id' | 'seen'>, other: FactId): boolean =>
  databaseOf(id) === databaseOf(other) ? other <= id : counterOf(other) <= (seen?.[databaseOf(other)] ?? -1);

/** The content of a fact without its envelope, which is made anew when it is recorded again. */
export const bodyOf = ({ kind, ...said }: Envelope): { kind: string } & Record<string, unknown> => ({
  kind,
  ...Object.fromEntries(Object.entries(said).filter(([name]) => !(name in envelope.shape))),
});
