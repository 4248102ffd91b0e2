import { newAgreementKey } from '../../exchange/sealed/agreement.ts';
import { sealingOf } from '../../exchange/sealed/day-keys.ts';
import { secretsOf } from '../../exchange/sealed/new-key.ts';
import { spokenOf } from '../../exchange/sealed/spoken.ts';
import type { Writer } from '../../exchange/sealed/writers.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import type { DayStore } from '../day-store.ts';
import type { HeldKeys, KeyRing, Offer, Offered } from '../key-ring.ts';
import type { Shelf } from '../shelf.ts';
import { accept, admit, askingOf, keysToShare, newWord } from './join.ts';
import { type Asking, askingCode, invitationCode, readAsking, readInvitation } from './join-codes.ts';
import { handOverTo, keysNow, membersOf, type Removed, removeMember } from './members.ts';
import { readPlaceCode } from './place-code.ts';
import { platformParts } from './platform-parts.ts';

/** What a code did when it was read. */
export type Read =
  | { readonly did: 'live' }
  /** The day that this phone has joined, and still has to get: by itself if it is live, or by codes. */
  | { readonly did: 'joined'; readonly day: string; readonly offer: Offer; readonly isLive: boolean }
  /** A phone asks to write, or to have the day: the owner compares what both screens say. */
  | { readonly did: 'asked'; readonly request: Request };

export interface Request {
  readonly asking: Asking;
  readonly offered: Offered;
  /** What the other phone shows too, if nobody else asks in its place. */
  readonly spoken: string;
  /** It was let in before, with another key. */
  readonly isAgain: boolean;
}

/**
 * Reads a code that puts the open day live, lets this phone join another, or lets a phone write on the open one. Null
 * for any other code; `day` is null where none is open.
 */
export async function readLiveCode(
  app: AppStore,
  day: string | null,
  text: string,
): Promise<Result<Read> | null> {
  const { live } = app.parts;
  if (!live) return null;
  const invitation = readInvitation(text);
  if (invitation) {
    await accept(platformParts, (await live.engine()).ring, invitation);
    app.parts.onlooking?.keep(invitation.day, invitation.offer === 'onlooker');
    const { day: joined, offer, place } = invitation;
    if (place) {
      live.places.keep(joined, place);
      live.start(joined);
    }
    return ok({ did: 'joined', day: joined, offer, isLive: place !== undefined });
  }
  if (day === null) return null;
  const store = await app.open(day);
  const { ring } = await live.engine();
  const place = readPlaceCode(text);
  if (place) {
    await keysToShare(platformParts, ring, app, store);
    live.places.keep(day, place);
    live.start(day);
    return ok({ did: 'live' });
  }
  const asking = readAsking(text);
  if (!asking) return null;
  const held = await ring.read(day);
  const offered = held?.offered?.find(({ word }) => word === asking.word);
  if (!offered) return fail({ code: 'join-word-used' });
  const spoken = await spokenOf(platformParts.crypto, asking.word, asking.key, asking.agreement);
  const { byName } = await membersOf(platformParts, held!, store);
  const isAgain = [...byName.values()].some(
    ({ database, key }) => database === asking.database && key !== asking.key,
  );
  return ok({ did: 'asked', request: { asking, offered, spoken, isAgain } });
}

/** Lets the phone in that asked, once its holder was seen to show the same words. Its one-time word is used up. */
export async function letIn(
  app: AppStore,
  day: string,
  { asking, offered }: Request,
): Promise<Result<unknown>> {
  const shared = await sharedDay(app, day);
  if (!shared) return fail({ code: 'live-not-owner' });
  const { held, store } = shared;
  if (!held.offered?.some(({ word }) => word === offered.word)) return fail({ code: 'join-word-used' });
  const left = held.offered.filter(({ word }) => word !== offered.word);
  await shared.ring.keep(day, { ...held, offered: left });
  const admitted = await admit(platformParts, held, store, asking);
  if (!admitted.ok || offered.offer === 'writer') return admitted;
  const { byName } = await membersOf(platformParts, held, store);
  const to = [...byName.values()].find(({ key }) => key === asking.key);
  return to ? handOverTo(platformParts, held, store, to, await shared.lastOf()) : admitted;
}

/** Who may write on a shared day, as its owner said, and what of it is this phone's. */
export interface Members {
  /** Without this phone. */
  readonly others: readonly Writer[];
  readonly isOwner: boolean;
  /** It joined to write, and the owner has not let it in yet. */
  readonly mayAsk: boolean;
  /** The day has a newer key than this phone was given: it neither reads what follows nor shares what is entered here. */
  readonly lacksKey: boolean;
  /** A copy of this phone writes under the key that it had; the owner has not let its new one in yet. */
  readonly isRenewed: boolean;
}

/** Null on a day that this phone has no keys of. */
export async function membersHere(app: AppStore, day: string): Promise<Members | null> {
  const shared = await sharedDay(app, day);
  if (!shared) return null;
  const { key, word, isRenewed } = shared.held;
  const { byName, owner, keyNumber } = await membersOf(platformParts, shared.held, shared.store);
  const keys = await keysNow(platformParts, shared.held, shared.store);
  const own = key && byName.get(key.writer);
  return {
    others: [...byName.values()].filter(({ writer }) => writer !== key?.writer),
    isOwner: owner.writer === key?.writer,
    mayAsk: key !== null && word !== undefined && !isLetIn(own),
    lacksKey: !sealingOf(keys, keyNumber),
    isRenewed: isRenewed === true && !isLetIn(own),
  };
}

/** One that was let in before phones could be given new keys asks again. */
const isLetIn = (own: Writer | null | undefined): boolean =>
  (own?.role === 'writer' || own?.role === 'owner') && own.agreement !== undefined;

export async function putOff(app: AppStore, day: string, member: Writer): Promise<Result<Removed>> {
  const shared = await sharedDay(app, day);
  if (!shared) return fail({ code: 'live-not-owner' });
  const agreement = shared.held.agreement ?? (await newAgreementKey(platformParts.crypto));
  // A code that was shown before lacks the new key: it lets nobody in any more.
  const held = { ...shared.held, agreement, offered: [] };
  await shared.ring.keep(day, held);
  return removeMember(platformParts, held, shared.store, member, await shared.lastOf());
}

interface SharedDay {
  readonly ring: KeyRing;
  readonly held: HeldKeys;
  readonly store: DayStore;
  readonly lastOf: () => Promise<(writer: string) => number>;
}

async function sharedDay(app: AppStore, day: string): Promise<SharedDay | null> {
  const { live } = app.parts;
  const engine = await live?.engine();
  const held = await engine?.ring.read(day);
  if (!engine || !held) return null;
  const { ring, shelf } = engine;
  return { ring, held, store: await app.open(day), lastOf: () => lastOf(shelf, day) };
}

/** The number of the last batch of each writer of the day that this phone has; 0 before the first. */
async function lastOf(shelf: Shelf, day: string): Promise<(writer: string) => number> {
  const { batches } = await shelf.read(day);
  return (writer) =>
    Math.max(0, ...batches.filter((batch) => batch.writer === writer).map(({ number }) => number));
}

/**
 * The code by which another phone joins a day, which is shared from now on if it was not; where it is live, the code
 * says so. Each that lets write has a new word.
 */
export async function codeToJoin(app: AppStore, day: string, offer: Offer): Promise<string> {
  const { live } = app.parts;
  if (!live) return '';
  const { ring } = await live.engine();
  const store = await app.open(day);
  const held = await keysToShare(platformParts, ring, app, store);
  const place = live.places.of(day);
  const { secret, firstOwner, offered = [] } = held;
  const secrets = secretsOf(secret, await keysNow(platformParts, held, store));
  const word = offer === 'onlooker' ? '' : newWord(platformParts);
  if (offer !== 'onlooker')
    await ring.keep(day, { ...held, offered: [...offered, { word, offer }].slice(-MOST_OFFERED) });
  return invitationCode({ day, secrets, firstOwner, offer, word, place });
}

/** Codes that were shown and not used; older ones let nobody in any more. */
const MOST_OFFERED = 10;

/** The code by which this phone asks to write. */
export async function codeToAsk(app: AppStore, day: string): Promise<string> {
  const held = await (await app.parts.live?.engine())?.ring.read(day);
  return held?.key && held.word ? askingCode(askingOf(app, held)) : '';
}

/** What this phone shows while it asks, for the owner to compare. */
export async function spokenHere(app: AppStore, day: string): Promise<string> {
  const held = await (await app.parts.live?.engine())?.ring.read(day);
  const { key, word = '', agreement } = held ?? {};
  return key ? spokenOf(platformParts.crypto, word, key.publicKey, agreement?.publicKey) : '';
}
