import type { Fact, UnknownFact } from '../../facts/fact.ts';
import type { DayId, Envelope } from '../../facts/kinds/envelope.ts';
import { fail, ok } from '../../shared/result.ts';
import type { AgreementKey } from './agreement.ts';
import type { DayKeys } from './day-keys.ts';
import { itsOwn } from './its-own.ts';
import { keysGiven } from './new-key.ts';
import type { SealedProblem, SealedResult } from './refusals.ts';
import {
  type ChainEnd,
  checkSigned,
  hashOfBatch,
  NO_BATCH,
  openSealed,
  readSealed,
  type SealedBatch,
  type SealingParts,
} from './seal.ts';
import type { SealedParts } from './sealed-bytes.ts';
import type { PublicKey } from './signing.ts';
import { isStatement } from './statements.ts';
import { standingOf, type Writers, writersOf } from './writers.ts';

/** A batch that was checked and opened, to be kept and folded. */
export interface OpenedBatch extends SealedBatch {
  readonly facts: readonly Envelope[];
  /** What `waits` said of it, if it had to wait. */
  readonly waited?: string;
}

/** What came of one batch. */
export type Taken =
  | {
      /** Itself, and those that waited for it. */
      readonly opened: readonly OpenedBatch[];
      /** Those that had waited and turned out to be none of the day's, by what `waits` said of each. */
      readonly refused: readonly { readonly waited: string; readonly problem: SealedProblem }[];
    }
  /** It waits here for what it needs, and goes by this until then. */
  | { readonly waits: string; readonly because: MayWait['code'] };

export interface IntakeStart {
  readonly day: DayId;
  readonly keys: DayKeys;
  /** What this phone is given new keys of the day by; missing for one that only looks on. */
  readonly own?: { readonly writer: string; readonly agreement: AgreementKey } | undefined;
  /** The key of the day's first owner, from the join code. */
  readonly firstOwner: PublicKey;
  /** What is on this phone already. */
  readonly facts: readonly (Fact | UnknownFact)[];
  /** By writer, the last batch that is on this phone. */
  readonly ends: ReadonlyMap<string, ChainEnd>;
  /** The hash of a batch that is on this phone; undefined if it is not. */
  readonly hashOf: (writer: string, number: number) => Promise<string | undefined>;
}

/** So much may wait here of what is not admitted, or follows what is missing; it can be had again from where it came. */
const MOST_WAITING_BYTES = 8_000_000;

/**
 * The door for sealed batches of one day: checks each, opens a writer's in the order of their numbers, and lets those
 * wait that came early. One at a time, in the order of calls.
 */
export class Intake {
  readonly #parts: SealingParts;
  readonly #start: IntakeStart;
  readonly #ends: Map<string, ChainEnd>;
  #facts: readonly (Fact | UnknownFact)[];
  #keys: DayKeys;
  #writers: Writers | undefined;
  #waiting = new Map<string, Uint8Array>();
  #busy: Promise<unknown> = Promise.resolve();

  constructor(parts: SealingParts, start: IntakeStart) {
    this.#parts = parts;
    this.#start = start;
    this.#facts = start.facts.filter(isStatement);
    this.#keys = start.keys;
    this.#ends = new Map(start.ends);
  }

  /** By writer, the last batch that was taken. */
  get ends(): ReadonlyMap<string, ChainEnd> {
    return this.#ends;
  }

  async writers(): Promise<Writers> {
    if (this.#writers) return this.#writers;
    const facts = this.#facts;
    const { firstOwner, own } = this.#start;
    const { crypto } = this.#parts;
    const writers = await writersOf(crypto, this.#keys.name, firstOwner, facts);
    const keys = await keysGiven(crypto, this.#keys, writers, own?.writer ?? null, own?.agreement);
    // Told of more meanwhile.
    if (facts !== this.#facts) return this.writers();
    this.#keys = keys;
    this.#writers = writers;
    return writers;
  }

  /** The keys of the day, with those that the owner gave to this phone since. */
  async keys(): Promise<DayKeys> {
    await this.writers();
    return this.#keys;
  }

  /** Tells of statements that came another way: by this phone's own hand, or with a file. */
  learn(facts: readonly (Fact | UnknownFact)[]): void {
    const known = new Set(this.#facts.map(({ id }) => id));
    const fresh = facts.filter((fact) => isStatement(fact) && !known.has(fact.id));
    if (fresh.length === 0) return;
    this.#facts = [...this.#facts, ...fresh];
    this.#writers = undefined;
  }

  /** Notes a batch that this phone sealed itself. */
  noteOwn({ writer, number, hash }: Pick<SealedBatch, 'writer' | 'number' | 'hash'>): void {
    this.#ends.set(writer, { number, hash });
  }

  take(bytes: Uint8Array): Promise<SealedResult<Taken>> {
    const taking = this.#busy.then(() => this.#take(bytes));
    this.#busy = taking.catch(() => {});
    return taking;
  }

  async #take(bytes: Uint8Array): Promise<SealedResult<Taken>> {
    const first = await this.#open(bytes);
    if (!first.ok) return this.#mayWait(first.problem, bytes);
    const opened = [first.value];
    const refused: { waited: string; problem: SealedProblem }[] = [];
    // What was opened may be what others waited for: a batch before theirs, their admission, or a key.
    for (let isMore = true; isMore; ) {
      isMore = false;
      for (const [waited, waiting] of [...this.#waiting]) {
        const next = await this.#open(waiting);
        if (!next.ok && canWait(next.problem)) continue;
        this.#waiting.delete(waited);
        if (next.ok) opened.push({ ...next.value, waited });
        else refused.push({ waited, problem: next.problem });
        isMore ||= next.ok;
      }
    }
    return ok({ opened, refused });
  }

  async #mayWait(problem: SealedProblem, bytes: Uint8Array): Promise<SealedResult<Taken>> {
    if (!canWait(problem)) return fail(problem);
    const waits = await hashOfBatch(this.#parts.crypto, new Uint8Array(bytes));
    const waiting = [...this.#waiting.values()].reduce((sum, { length }) => sum + length, 0);
    if (!this.#waiting.has(waits) && waiting + bytes.length > MOST_WAITING_BYTES)
      return fail({ code: 'sealed-too-many' });
    this.#waiting.set(waits, bytes);
    return ok({ waits, because: problem.code });
  }

  async #open(bytes: Uint8Array): Promise<SealedResult<OpenedBatch>> {
    const read = readSealed(this.#keys, bytes);
    if (!read.ok) return read;
    const { writer, number, signedBytes } = read.value;
    const mayWrite = await this.#mayWrite(read.value);
    if (!mayWrite.ok) return mayWrite;
    const hash = await hashOfBatch(this.#parts.crypto, signedBytes);
    const follows = await this.#follows(read.value, hash);
    if (!follows.ok) return follows;
    const facts = await openSealed(this.#parts, await this.keys(), this.#start.day, read.value);
    if (!facts.ok) return facts;
    const said = await itsOwn(this.#parts.crypto, this.#keys.name, await this.writers(), writer, facts.value);
    if (!said.ok) return said;
    this.learn(said.value);
    this.#ends.set(writer, { number, hash });
    return ok({ writer, number, hash, bytes: new Uint8Array(bytes), facts: facts.value });
  }

  async #mayWrite(parts: SealedParts): Promise<SealedResult<true>> {
    const writers = await this.writers();
    const standing = standingOf(writers, parts.writer, parts.number);
    if (standing === 'foreign') return fail({ code: 'sealed-foreign' });
    const checked = await checkSigned(this.#parts.crypto, writers.byName.get(parts.writer)!.key, parts);
    if (!checked.ok) return checked;
    if (standing === 'removed') return fail({ code: 'sealed-by-removed' });
    return standing === 'onlooker' ? fail({ code: 'sealed-by-onlooker' }) : ok(true);
  }

  async #follows({ writer, number, before }: SealedParts, hash: string): Promise<SealedResult<true>> {
    const end = this.#ends.get(writer) ?? NO_BATCH;
    if (number > end.number + 1) return fail({ code: 'sealed-out-of-order' });
    if (number === end.number + 1)
      return before === end.hash ? ok(true) : fail({ code: 'sealed-past-changed' });
    const here = number === end.number ? end.hash : await this.#start.hashOf(writer, number);
    return fail({ code: here === undefined || here === hash ? 'sealed-replayed' : 'sealed-number-twice' });
  }
}

/** What an admission, an earlier batch or a new key may still make good. */
type MayWait = Extract<
  SealedProblem,
  { code: 'sealed-foreign' | 'sealed-out-of-order' | 'sealed-key-missing' }
>;

const canWait = (problem: SealedProblem): problem is MayWait =>
  ['sealed-foreign', 'sealed-out-of-order', 'sealed-key-missing'].includes(problem.code);
