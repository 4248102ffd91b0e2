import type * as z from 'zod/mini';
import { isWord } from '../shared/open-word.ts';
import { fail, ok, type ProblemOf, type Result } from '../shared/result.ts';
import { cardChecked, differenceKept } from './kinds/card-checked.ts';
import {
  channelsTuned,
  gangDeclared,
  gangEnded,
  inputsSent,
  leadsPlugged,
  muteSet,
  rollChanged,
  selectorsThrown,
  trackNamed,
  transmitterWorn,
  voicesNeeded,
} from './kinds/chain-changed.ts';
import { conflictResolved, factMoved, factRetracted, takesJoined } from './kinds/corrected.ts';
import { dayDescribed, dayWrapped } from './kinds/day-described.ts';
import { type Envelope, envelope } from './kinds/envelope.ts';
import { handedOver } from './kinds/handed-over.ts';
import type { Kind } from './kinds/kind.ts';
import { listenerDescribed } from './kinds/listener-described.ts';
import { micMounted } from './kinds/mic-mounted.ts';
import { partDescribed, rigLaid } from './kinds/part-described.ts';
import { phoneNamed } from './kinds/phone-named.ts';
import { movesWeighed, moveTicked, outMarked, voicePinned } from './kinds/plan-settings.ts';
import { bandDescribed, carrierDescribed, guardsSet, transmittersSwitched } from './kinds/radio-planned.ts';
import { recorderSet, recordersRolling } from './kinds/recorder-set.ts';
import { reportSent } from './kinds/report-sent.ts';
import { leadsDescribed, runDescribed } from './kinds/runs-described.ts';
import { scenesDescribed } from './kinds/scenes-described.ts';
import { clockFollowed, noteAdded, slateCalled, takeDescribed, takeLogged } from './kinds/take-logged.ts';
import {
  cardDescribed,
  cellsChanged,
  devicesDescribed,
  devicesJammed,
  shiftPlanned,
  timecodeCompared,
} from './kinds/upkeep-logged.ts';
import { voiceDescribed } from './kinds/voice-described.ts';
import { dayPassedOn, writerAdmitted, writerRemoved } from './kinds/writer-admitted.ts';
import { storedForm } from './stored.ts';

/** Every kind of fact this version knows. A retired name is never reused: old journals still contain it. */
export const KINDS = [
  dayDescribed,
  voiceDescribed,
  partDescribed,
  rigLaid,
  transmitterWorn,
  channelsTuned,
  leadsPlugged,
  selectorsThrown,
  inputsSent,
  muteSet,
  gangDeclared,
  gangEnded,
  trackNamed,
  voicesNeeded,
  rollChanged,
  recorderSet,
  recordersRolling,
  voicePinned,
  outMarked,
  movesWeighed,
  slateCalled,
  takeLogged,
  takeDescribed,
  noteAdded,
  clockFollowed,
  guardsSet,
  carrierDescribed,
  bandDescribed,
  transmittersSwitched,
  cellsChanged,
  devicesJammed,
  timecodeCompared,
  devicesDescribed,
  cardDescribed,
  shiftPlanned,
  runDescribed,
  leadsDescribed,
  factRetracted,
  factMoved,
  conflictResolved,
  takesJoined,
  reportSent,
  cardChecked,
  differenceKept,
  handedOver,
  scenesDescribed,
  phoneNamed,
  micMounted,
  listenerDescribed,
  writerAdmitted,
  writerRemoved,
  dayPassedOn,
  dayWrapped,
  moveTicked,
] as const;

type AnyKind = (typeof KINDS)[number];
type BodyOf<K> = K extends Kind<infer Name, infer Body> ? { readonly kind: Name } & z.infer<Body> : never;

/** What a command produces, before it gets an id, a time and a day. `before`: just before that take. */
export type Draft = {
  [K in AnyKind as K['name']]: BodyOf<K> & { before?: string | undefined };
}[AnyKind['name']];
/** One recorded fact. */
export type Fact = Envelope & BodyOf<AnyKind>;
export type FactOf<Name extends Fact['kind']> = Extract<Fact, { kind: Name }>;

/** A fact from a newer version: kept unchanged and shown, but not understood. */
export interface UnknownFact extends Envelope {
  readonly unknown: true;
}

const byName = new Map<string, Kind<string, z.ZodMiniType>>(KINDS.map((kind) => [kind.name, kind]));

export const isKnown = (fact: Fact | UnknownFact): fact is Fact => (fact as UnknownFact).unknown !== true;

/**
 * Reads a stored or foreign value as a fact, lifting old versions one step at a time. An unknown kind or
 * version comes back marked `unknown`, and so does a fact that cannot be read without an unknown word. Fails
 * with `fact-damaged` and the path of the first bad field.
 */
export function readFact(raw: unknown): Result<Fact | UnknownFact, ProblemOf<'fact-damaged'>> {
  const head = envelope.safeParse(raw);
  if (!head.success) return damaged(head.error);
  const { kind, v } = raw as Envelope;
  const known = byName.get(kind);
  // Keeps the value itself, not the parser's copy: fields unknown to this version must survive an export.
  const kept = storedForm(raw as Envelope);
  if (!known || v > known.version) return ok({ ...kept, unknown: true });
  const lifted = known.newer(liftWith(known, kept)) as Envelope;
  const body = known.body.safeParse(lifted);
  if (body.success) return ok(lifted as Fact);
  return hangsOnNewerWord(body.error.issues, lifted) ? ok({ ...kept, unknown: true }) : damaged(body.error);
}

/** Whether it can be stored, merged and exported as it is, understood or not. */
export const isReadable = (raw: unknown): raw is Envelope => readFact(raw).ok;

/**
 * Lifts the body to this version, one step at a time. Lifts run before the body is checked, so they must cope
 * with any body. Throws if a step is missing.
 */
export function liftWith(known: Kind<string, z.ZodMiniType>, fact: Envelope): Envelope {
  let body: Envelope = fact;
  for (let version = fact.v; version < known.version; version += 1) {
    const step = known.lifts[version];
    if (!step) throw new Error(`No lift for ${known.name} version ${version}`);
    body = { ...(step(body) as Envelope), v: version + 1 };
  }
  return body;
}

interface Issue {
  readonly code?: string;
  readonly path: PropertyKey[];
}

/** Whether a body's only fault is enum words that this version does not know. */
const hangsOnNewerWord = (issues: readonly Issue[], body: unknown): boolean =>
  issues.every(
    ({ code, path }) => (code === 'invalid_value' || code === 'invalid_union') && isWord(valueAt(body, path)),
  );

const valueAt = (body: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, name) => (value as Record<PropertyKey, unknown> | undefined)?.[name], body);

function damaged(error: { readonly issues: readonly Issue[] }): Result<never, ProblemOf<'fact-damaged'>> {
  const [first] = error.issues;
  return fail({ code: 'fact-damaged', where: first?.path.map(String).join('.') || 'the fact itself' });
}

export const versionOf = (name: Fact['kind']): number => byName.get(name)!.version;
