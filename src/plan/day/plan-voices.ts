import { type Answers, answersAtTake } from '../../day/answers/answers.ts';
import type { VoiceState } from '../../day/answers/voice-answers.ts';
import { isHardline } from '../../day/cast-in-order.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { pinsOf, wornBy } from '../../day/chain/links.ts';
import { pinsOn } from '../../day/chain/pins.ts';
import type { Day, Links, PartId, TakeId, Voice, VoiceId } from '../../day/model.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import { placeOfTake, takesInOrder } from '../../day/takes.ts';
import type { PlanVoice } from '../plan-problem.ts';
import type { Settled } from './heard-elsewhere.ts';

/** How far back to look for a voice's last track. */
const TAKES_BACK = 60;

/** The recorder that voices are planned for, and up to which take. */
interface Recorded {
  readonly recorder: PartId;
  readonly before: TakeId | undefined;
}

/** Who is needed, and how each may come in. */
export function planVoices(
  day: Day,
  { links, voices, main }: Answers,
  wanted: ReadonlySet<VoiceId>,
  settled: Settled,
  on: Recorded,
): PlanVoice[] {
  const last = lastTracks(day, on);
  const asked = { recorder: on.recorder, isMain: recordsAs(day.rig, main.recorder) === on.recorder };
  const need = new Map(voices.map((answer) => [answer.voice.id, answer.need]));
  const pinned = new Set([...day.voices.keys()].flatMap((id) => pinsOf(links, id)?.value?.transmitter ?? []));
  const packOf = (voice: VoiceId, pin: PartId | undefined): PartId | undefined => {
    const pack = settled.packs.get(voice);
    // A pack that somebody else is pinned to would be pinned twice.
    return pack && (pack === pin || !pinned.has(pack)) ? pack : pin;
  };
  return [...day.voices.values()]
    .filter(({ struck }) => !struck)
    .map((voice) => {
      const pins = pinsOn(day.rig, links, voice.id, asked);
      const lastTrack = last.get(voice.id);
      const pack = packOf(voice.id, pins.transmitter);
      return {
        id: voice.id,
        priority: voice.priority,
        needed: wanted.has(voice.id),
        done: need.get(voice.id) === 'done',
        ...waysOf(day, links, voice),
        ...(pack && { pinnedTransmitter: pack }),
        ...(pins.channel && { pinnedChannel: pins.channel }),
        ...(pins.input && { pinnedInput: pins.input }),
        ...(pins.track && { pinnedTrack: pins.track }),
        ...(pins.alone && { alone: true }),
        ...(lastTrack && { lastTrack }),
      };
    });
}

/**
 * A boom, plant or feed comes in by its own lead or by a pack; a performer by a pack, or by a lead if there
 * is one. Both stay possible, so that giving up a pack restores the earlier plan.
 */
function waysOf({ rig }: Day, links: Links, { id, kind }: Voice): Pick<PlanVoice, 'hardline' | 'mayWear'> {
  const hasLead = isHardline(kind) || [...leadsOf(rig, links)].some(({ link }) => link.value.from === id);
  if (!hasLead) return {};
  const wears = rig.transmitters.some((pack) => wornBy(links, pack.id)?.value === id);
  const isPinned = pinsOf(links, id)?.value?.transmitter !== undefined;
  return { hardline: id, mayWear: kind === 'performer' || wears || isPinned };
}

const IS_RECORDED: ReadonlySet<VoiceState> = new Set(['alone', 'gang', 'clash']);

/** The track of a recorder that each voice was last recorded on. */
function lastTracks(day: Day, { recorder, before }: Recorded): Map<VoiceId, PartId> {
  const tracks = new Map<VoiceId, PartId>();
  const end = before === undefined ? day.line.length : placeOfTake(day, before);
  const takes = takesInOrder(day).filter(({ id }) => placeOfTake(day, id) < end);
  for (const { id } of takes.slice(-TAKES_BACK)) {
    const rolled = answersAtTake(day, id).recorders.find(
      (one) => one.rolls && recordsAs(day.rig, one.recorder) === recorder,
    );
    for (const { voice, state, tracks: on } of rolled?.voices ?? []) {
      if (on[0] && IS_RECORDED.has(state)) tracks.set(voice.id, on[0]);
    }
  }
  return tracks;
}
