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

/** A measured or planned figure; the ends belong to it. */
export const amount = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));

const LATEST_MS = 253_402_300_799_999;
/** A moment in UTC ms. */
export const momentMs = wholeNumber(0, LATEST_MS);

/**
 * What every fact carries. `at` is UTC ms when it was said and `zone` the minutes east of UTC there; neither orders
 * anything. `batch` is the id of the first fact of the same action. `before` places the fact just before a take.
 * `ahead` says that the phone's clock was set ahead by so many ms since the same window's action before.
 * `seen` names, for every other database whose facts were known when this was said, its highest counter.
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

/** The batch a fact belongs to: one action of the user, one transaction, one undo step. */
export const batchOf = (fact: Envelope): FactId => fact.batch ?? fact.id;

/**
 * Whether whoever said a fact knew of another when it was said. The windows of one phone share a database and know of
 * each other, so there the order of the ids tells; of another database a fact knew what is under its `seen`.
 */
export const knew = ({ id, seen }: Pick<Envelope, 'id' | 'seen'>, other: FactId): boolean =>
  databaseOf(id) === databaseOf(other) ? other <= id : counterOf(other) <= (seen?.[databaseOf(other)] ?? -1);

/** What a fact says, without the envelope in which it was said: that one is made anew when it is said again. */
export const bodyOf = ({ kind, ...said }: Envelope): { kind: string } & Record<string, unknown> => ({
  kind,
  ...Object.fromEntries(Object.entries(said).filter(([name]) => !(name in envelope.shape))),
});
