import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import {
  accept,
  admit,
  askingCode,
  askingOf,
  invitationCode,
  keysToShare,
  readAsking,
  readInvitation,
} from './join.ts';
import { readPlaceCode } from './place-code.ts';
import { platformParts } from './platform-parts.ts';

/** What a code did when it was read. */
export type Read =
  | { readonly did: 'live' }
  /** The day that this phone has joined, and still has to get. */
  | { readonly did: 'joined'; readonly day: string }
  | { readonly did: 'admitted'; readonly name: string };

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
    await accept(platformParts, await live.ring(), invitation);
    live.places.keep(invitation.day, invitation.place);
    live.start(invitation.day);
    return ok({ did: 'joined', day: invitation.day });
  }
  if (day === null) return null;
  const store = await app.open(day);
  const ring = await live.ring();
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
  const admitted = held ? await admit(platformParts, held, store, asking) : fail({ code: 'live-not-owner' });
  return admitted.ok ? ok({ did: 'admitted', name: asking.name }) : admitted;
}

/** The code by which another phone joins a live day; empty if it is not live. */
export async function codeToJoin({ parts: { live } }: AppStore, day: string): Promise<string> {
  const held = await (await live?.ring())?.read(day);
  const place = live?.places.of(day);
  return held && place
    ? invitationCode({ day, secret: held.secret, firstOwner: held.firstOwner, place })
    : '';
}

/** The code by which this phone asks to write. */
export async function codeToAsk(app: AppStore, day: string): Promise<string> {
  const held = await (await app.parts.live?.ring())?.read(day);
  return held ? askingCode(askingOf(app, held)) : '';
}
