import * as z from 'zod/mini';
import { shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

export const WRITER_ROLES = ['owner', 'writer', 'onlooker'] as const;

/** 16 bytes of the hash of a public key, in hexadecimal digits. */
const writer = z.string().check(z.regex(/^[0-9a-f]{32}$/));
const publicKey = z.string().check(z.regex(/^([0-9a-f]{64}|04[0-9a-f]{128})$/));
/** A public key of X25519 or P-256, by which something can be sealed to its phone alone. */
const agreement = publicKey;
/** 32 bytes sealed to one phone, after the public key of 32 or 65 bytes that was made for it. */
const box = z.string().check(z.regex(/^([0-9a-f]{160}|04[0-9a-f]{224})$/));
/** A join code carries every key of the day, and stays one that a camera reads. */
export const MOST_KEYS = 20;
const database = z.string().check(z.regex(/^[0-9a-z]{6}$/));
const MOST = 1_000_000;

/**
 * What the owner of a shared day says of who may write, each with a number of its own and signed with the owner's key:
 * a file can carry it, and nobody else can make it.
 */
const byOwner = {
  number: wholeNumber(1, MOST),
  owner: writer,
  signature: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
};

/** A phone's keys, and whether it may write. The first of a day names the owner itself. A role of a newer version admits nobody. */
export const writerAdmitted = kind(
  'writer-admitted',
  z.object({
    ...byOwner,
    key: publicKey,
    role: z.enum(WRITER_ROLES),
    name: shortText,
    job: shortText,
    database,
    agreement: z.optional(agreement),
  }),
);

/**
 * A phone is put off the day: of what it said, its batches up to `counted` still count, with its entries up to the
 * counter `upTo`. `newKey`: what seals the day from then on, for each phone that stays, sealed to it alone.
 */
export const writerRemoved = kind(
  'writer-removed',
  z.object({
    ...byOwner,
    writer,
    database,
    counted: wholeNumber(0, 1_000_000_000),
    upTo: wholeNumber(0, 500_000_000),
    newKey: z.optional(z.object({ number: wholeNumber(2, MOST_KEYS), boxes: z.record(writer, box) })),
  }),
);

/** The day has another owner; the one before reads on. `counted`: the last of its batches. */
export const dayPassedOn = kind(
  'day-passed-on',
  z.object({ ...byOwner, to: writer, counted: wholeNumber(0, 1_000_000_000) }),
);
