import type { PartId, TakeId, VoiceId } from '../../day/model.ts';
import type { Matter } from '../../report/matter.ts';
import type { Tab } from '../frame/route.ts';

/** Where to resolve a matter: a sheet, or a tab of the day. `from` is the first take it concerns. */
export type Place =
  | { readonly sheet: 'take'; readonly take: TakeId }
  | { readonly sheet: 'track'; readonly track: PartId; readonly from: TakeId | undefined }
  | { readonly sheet: 'voice'; readonly voice: VoiceId; readonly from: TakeId | undefined }
  /** The header of the day, with its rolls and the offer of a newer app. */
  | { readonly sheet: 'day' }
  /** Conflicts between phones, with the alternatives. */
  | { readonly sheet: 'conflicts' }
  | { readonly tab: Tab };

/** Where to resolve a matter. A late correction begins at the first take it touches. */
export function placeOf(matter: Matter): Place {
  const first = matter.takes?.[0];
  const last = matter.takes?.at(-1);
  const { track, voice } = matter;
  switch (matter.code) {
    case 'clash':
    case 'name-typed-over':
      return typeof track === 'string' ? { sheet: 'track', track, from: first } : { tab: 'now' };
    case 'voice-unrecorded':
    case 'voice-muted':
    case 'voice-pack-gone':
      return typeof voice === 'string' ? { sheet: 'voice', voice, from: first } : { tab: 'now' };
    case 'takes-without-start':
    case 'takes-without-length':
      return first ? { sheet: 'take', take: first } : { tab: 'line' };
    case 'takes-numbered-twice':
    case 'files-named-twice':
      // The one logged last is more likely to be wrong.
      return last ? { sheet: 'take', take: last } : { tab: 'line' };
    case 'said-open':
    case 'head-lacks':
    case 'facts-unknown':
    case 'words-unknown':
    case 'roll-lacking':
    case 'name-on-two-recorders':
      return { sheet: 'day' };
    case 'clash-on-input':
      return { tab: 'rig' };
    case 'phones-differ':
      return { sheet: 'conflicts' };
    case 'take-open':
      return { tab: 'now' };
    default:
      return { tab: 'line' };
  }
}
