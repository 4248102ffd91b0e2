import { answersNow } from '../../day/answers/answers.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { allPins } from '../../day/chain/pins.ts';
import type { Day, Lead, PartId, VoiceId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';

// Links keep naming removed parts, so that those can come back as they were. This filters them out.

type End = PartId | VoiceId | null;

/** The part, unless it was removed. */
export const ifInRig = ({ rig }: Day, id: End | undefined): PartId | null =>
  id && rig.byId.has(id) ? id : null;

/** The part or voice, unless it was removed. */
export const ifASource = (day: Day, id: End | undefined): End =>
  ifInRig(day, id) ?? (id && day.voices.get(id)?.struck === false ? id : null);

/** The current leads between what is still there; an end at anything else hangs free. */
export const leadsInRig = (day: Day): (Lead & { readonly lead: string })[] =>
  [...leadsOf(day.rig, answersNow(day).links)]
    .map(({ id, link: { value } }) => ({
      lead: id,
      ...value,
      from: ifASource(day, value.from),
      to: ifInRig(day, value.to),
    }))
    .filter(({ from, to }) => from !== null || to !== null);

/** Removes pins to a part that is gone: no plan could honour them. "Never ganged" names no part. */
export function pinsWithout(day: Day, isGone: (part: PartId) => boolean): Draft[] {
  const { links } = answersNow(day);
  return [...day.voices.keys()].flatMap((voice) =>
    allPins(day.rig, links, voice).flatMap(({ recorder, pins }): Draft[] => {
      const all = Object.entries(pins);
      const kept = all.filter(([, pinned]) => typeof pinned !== 'string' || !isGone(pinned));
      if (kept.length === all.length) return [];
      const left = kept.length > 0 ? Object.fromEntries(kept) : null;
      return [{ kind: 'voice-pinned', voice, pins: left, ...(recorder && { recorder }) }];
    }),
  );
}
