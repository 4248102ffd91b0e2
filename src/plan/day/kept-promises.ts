import type { Answers } from '../../day/answers/answers.ts';
import type { Heard } from '../../day/answers/track-answers.ts';
import { gangOf, gangsOn } from '../../day/chain/gang-links.ts';
import { mutedAt, sentTo } from '../../day/chain/links.ts';
import type { PartId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import type { Draft } from '../../facts/fact.ts';
import type { RecordedVoice } from '../moves.ts';
import { channelsElsewhere } from './heard-elsewhere.ts';
import type { PlannedChain } from './planned-chain.ts';

interface Promises {
  /** Whose they are: what other recorders hear stays as it is. */
  readonly recorder: PartId;
  readonly recorded: readonly RecordedVoice[];
  /** Those whose whole chain stands, muted or not. */
  readonly standing: readonly RecordedVoice[];
  /** Those who are recorded as promised now. */
  readonly kept: readonly RecordedVoice[];
}

/**
 * What else is needed for a plan's promises to hold at the recorder: whoever is promised a track and arrives
 * there is heard, alone or in the planned gang, and nobody else is. Those only waiting are muted. Those
 * promised a track are never muted: what also brings them onto another track, or in twice, is tuned away,
 * rerouted or unplugged, but only once their own chain stands. If only some moves are accepted, this covers
 * the people whom those moves bring onto their track.
 */
export function keepPromises(
  chain: PlannedChain,
  recorder: PartId,
  recorded: readonly RecordedVoice[],
  isWhole: boolean,
): void {
  const standing = arrived(chain.answers(), recorded);
  const before = new Set(isWhole ? [] : arrived(chain.before, recorded));
  const kept = standing.filter((one) => !before.has(one));
  const promises = { recorder, recorded, standing, kept };
  chain.say(...heardAgain(chain, promises));
  // Terminates: each round ends arrivals and begins none.
  for (;;) {
    const drafts = straysOf(chain, promises);
    if (drafts.length === 0) break;
    chain.say(...drafts);
  }
  chain.say(...gangsOf(chain, promises));
}

function arrived({ tracks }: Answers, recorded: readonly RecordedVoice[]): RecordedVoice[] {
  const heardOn = new Map(tracks.map(({ track, heard }) => [track.id, heard]));
  return recorded.filter((one) => heardOn.get(one.track)?.some((heard) => isArrivalOf(one, heard)));
}

const isArrivalOf = (one: RecordedVoice, { voice, source, input }: Heard): boolean =>
  voice === one.voice &&
  source.transmitter === (one.transmitter ?? null) &&
  source.id === one.source &&
  input === one.input;

function heardAgain({ links }: PlannedChain, { kept }: Promises): Draft[] {
  const isMuted = (part: PartId): boolean => mutedAt(links, part)?.value ?? false;
  return kept.flatMap(({ transmitter, input }): Draft[] => [
    ...(transmitter !== undefined && isMuted(transmitter) ? [muting('transmitter', transmitter, false)] : []),
    ...(isMuted(input) ? [muting('input', input, false)] : []),
  ]);
}

const muting = (what: 'transmitter' | 'input', part: PartId, muted: boolean): Draft => ({
  kind: 'mute-set',
  what,
  part,
  muted,
});

/** For everybody who must not be heard where they are, what ends it: one action per part. */
function straysOf(chain: PlannedChain, promises: Promises): Draft[] {
  const { recorder, recorded, standing, kept } = promises;
  const answers = chain.answers();
  const elsewhere = channelsElsewhere(answers, recorder);
  const tracks = answers.tracks.filter(({ track }) => recorderOfPart(track) === recorder);
  const taken = new Set(kept.map(({ track }) => track));
  const waits = new Set(recorded.map(({ voice }) => voice));
  const ends = new Map<string, Draft>();
  for (const { track, heard } of tracks) {
    for (const one of heard) {
      if (standing.some((other) => other.track === track.id && isArrivalOf(other, one))) continue;
      const own = standing.find(({ voice }) => voice === one.voice);
      const disturbs = taken.has(track.id) && !one.muted;
      // Promised a track but not there yet: the rest of the plan moves them away from here.
      if (!own && disturbs && !waits.has(one.voice)) ends.set(...muted(one, standing, elsewhere));
      const isUnasked = own && kept.includes(own) && isSurplus(chain.before, own, one, track.id, heard);
      if (own && (disturbs || isUnasked)) ends.set(...turnedAway(answers, own, one, track.id, elsewhere));
    }
  }
  return [...ends.values()];
}

/**
 * Whether the plan brought somebody onto a track by another route than the planned one, as a second channel
 * or newly heard with others. Older doubles stay: a mixer may record somebody twice on purpose.
 */
function isSurplus(
  before: Answers,
  own: RecordedVoice,
  one: Heard,
  track: PartId,
  heard: readonly Heard[],
): boolean {
  const there = before.tracks.find((other) => other.track.id === track)?.heard ?? [];
  const was = there.find(
    ({ voice, source, input }) => voice === one.voice && source.id === one.source.id && input === one.input,
  );
  const isSecondChannel = one.source.id !== own.source && one.source.transmitter === own.transmitter;
  const isNewlyHeard = !one.muted && was?.muted !== false;
  return (isSecondChannel && !was) || (isNewlyHeard && heard.some((other) => other !== one && !other.muted));
}

/** At the body; where another recorder hears them too, at the input, unless somebody stays who comes in there. */
function muted(
  { source, input }: Heard,
  standing: readonly RecordedVoice[],
  elsewhere: ReadonlySet<PartId>,
): [PartId, Draft] {
  const isAtInput =
    source.channel !== null && elsewhere.has(source.channel) && !standing.some((one) => one.input === input);
  return source.transmitter && !isAtInput
    ? [source.transmitter, muting('transmitter', source.transmitter, true)]
    : [input, muting('input', input, true)];
}

function turnedAway(
  { links, inputs }: Answers,
  own: RecordedVoice,
  { source, input }: Heard,
  track: PartId,
  elsewhere: ReadonlySet<PartId>,
): [string, Draft] {
  if (source.channel && source.id !== own.source && !elsewhere.has(source.channel)) {
    const tunings = [{ channel: source.channel, transmitter: null }];
    return [source.channel, { kind: 'channels-tuned', tunings }];
  }
  if (source.id === own.source && input === own.input) {
    const tracks = (sentTo(links, input)?.value ?? []).filter((one) => one !== track);
    return [input, { kind: 'inputs-sent', routes: [{ input, tracks }] }];
  }
  const { lead, from } = inputs.find((one) => one.input.id === input)!.reach.arrival!;
  return [lead, { kind: 'leads-plugged', leads: [{ lead, from, to: null }] }];
}

function gangsOf({ links }: PlannedChain, { standing, kept }: Promises): Draft[] {
  const tracks = [...new Set(kept.map(({ track }) => track))];
  return tracks.flatMap((track): Draft[] => {
    const sources = standing.filter((one) => one.track === track).map(({ source }) => source);
    if (sources.length < 2 || gangOf(gangsOn(links, track), sources)) return [];
    return [{ kind: 'gang-declared', track, sources }];
  });
}
