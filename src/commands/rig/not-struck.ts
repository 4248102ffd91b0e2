import { answersNow } from '../../day/answers/answers.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { pinsOf } from '../../day/chain/links.ts';
import type { Day, Lead, PartId, VoiceId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';

// Links go on naming what was struck, so that it can come back as it was. Here is what of them stands.

type End = PartId | VoiceId | null;

/** The part, unless it was struck. */
export const ifInRig = ({ rig }: Day, id: End | undefined): PartId | null =>
  id && rig.byId.has(id) ? id : null;

/** The part or voice, unless it was struck. */
export const ifASource = (day: Day, id: End | undefined): End =>
  ifInRig(day, id) ?? (id && day.voices.get(id)?.struck === false ? id : null);

/** The leads as they are plugged now between what stands; an end at anything else hangs free. */
export const leadsInRig = (day: Day): (Lead & { readonly lead: string })[] =>
  [...leadsOf(day.rig, answersNow(day).links)]
    .map(({ id, link: { value } }) => ({
      lead: id,
      ...value,
      from: ifASource(day, value.from),
      to: ifInRig(day, value.to),
    }))
    .filter(({ from, to }) => from !== null || to !== null);

/** Lets go the pins that name a part which is gone: no plan could ever keep them. Never to be ganged names none. */
export function pinsWithout(day: Day, isGone: (part: PartId) => boolean): Draft[] {
  const { links } = answersNow(day);
  return [...day.voices.keys()].flatMap((voice): Draft[] => {
    const pins = Object.entries(pinsOf(links, voice)?.value ?? {});
    const kept = pins.filter(([, pinned]) => typeof pinned !== 'string' || !isGone(pinned));
    if (kept.length === pins.length) return [];
    return [{ kind: 'voice-pinned', voice, pins: kept.length > 0 ? Object.fromEntries(kept) : null }];
  });
}
