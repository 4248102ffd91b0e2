import { answersBefore } from '../../day/answers/answers.ts';
import { isGangAt, stretchOf } from '../../day/answers/gang-reach.ts';
import type { Day, Need, PartId, SelectorPosition, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed } from '../command.ts';

/** Puts a transmitter on a voice, or (null) on nobody. Whoever wore it before wears it no longer. */
export function giveTransmitter(
  day: Day,
  transmitter: PartId,
  to: VoiceId | null,
  at: Placing = {},
): CommandResult {
  if (!day.rig.byId.has(transmitter)) return missing('transmitter', transmitter);
  if (to !== null && !day.voices.has(to)) return missing('voice', to);
  return ok([placed({ kind: 'transmitter-worn', transmitter, voice: to }, at)]);
}

/** Tunes a receiver channel to a transmitter, or (null) to none. */
export function tuneChannel(
  day: Day,
  channel: PartId,
  transmitter: PartId | null,
  at: Placing = {},
): CommandResult {
  if (!day.rig.byId.has(channel)) return missing('channel', channel);
  if (transmitter !== null && !day.rig.byId.has(transmitter)) return missing('transmitter', transmitter);
  return ok([placed({ kind: 'channels-tuned', tunings: [{ channel, transmitter }] }, at)]);
}

/** Throws one selector, or a bank of them at once. */
export function throwSelectors(
  day: Day,
  selectors: readonly PartId[],
  position: SelectorPosition,
  at: Placing = {},
): CommandResult {
  const unknown = selectors.find((id) => day.rig.byId.get(id)?.type !== 'selector');
  if (unknown !== undefined || selectors.length === 0) return missing('selector', unknown ?? '');
  return ok([placed({ kind: 'selectors-thrown', selectors: [...selectors], position }, at)]);
}

/** Sends an input to these iso tracks of its recorder and no others. The mix hears every input and is not said. */
export function sendInput(
  day: Day,
  input: PartId,
  tracks: readonly PartId[],
  at: Placing = {},
): CommandResult {
  if (day.rig.byId.get(input)?.type !== 'input') return missing('input', input);
  const wrong = tracks.find((id) => day.rig.byId.get(id)?.type !== 'track' || day.rig.byId.get(id)?.mix);
  if (wrong !== undefined) return missing('iso track', wrong);
  const own = recorderOfPart(day.rig.byId.get(input)!);
  const other = tracks.map((id) => day.rig.byId.get(id)!).find((track) => recorderOfPart(track) !== own);
  if (other)
    return fail({ code: 'track-elsewhere', input: day.rig.byId.get(input)!.name, track: other.name });
  return ok([placed({ kind: 'inputs-sent', routes: [{ input, tracks: [...tracks] }] }, at)]);
}

/** Sends an input to a track instead of another; what it feeds besides stays. */
export function moveToTrack(
  day: Day,
  input: PartId,
  from: PartId,
  to: PartId,
  at: Placing = {},
): CommandResult {
  const fed = answersBefore(day, at.before).inputs.find((one) => one.input.id === input)?.reach.tracks ?? [];
  const kept = fed.filter((id) => id !== from && id !== to && day.rig.byId.has(id));
  return sendInput(day, input, [...kept, to], at);
}

/** Mutes or unmutes an input or a transmitter. */
export function setMute(day: Day, part: PartId, muted: boolean, at: Placing = {}): CommandResult {
  const type = day.rig.byId.get(part)?.type;
  if (type === undefined || !isOneOf(['input', 'transmitter'], type)) return missing('input', part);
  return ok([placed({ kind: 'mute-set', what: type, part, muted }, at)]);
}

export interface GangPlacing extends Placing {
  /** For a change before a take: also holds after the track next changes. */
  readonly onwards?: boolean;
}

/**
 * Declares that all who share a track do so on purpose, in addition to its other gangs. Before a past take it
 * lasts until the track next changes, unless `onwards`.
 */
export function declareGang(day: Day, track: PartId, at: GangPlacing = {}): CommandResult {
  const answer = answersBefore(day, at.before).tracks.find((one) => one.track.id === track);
  if (!answer) return missing('track', track);
  const sources = [...new Set(answer.heard.map(({ source }) => source.id))];
  if (sources.length < 2) return fail({ code: 'gang-of-one', track: answer.track.name });
  const declared = placed({ kind: 'gang-declared', track, sources }, at);
  const until = at.before && !at.onwards ? stretchOf(day, track, at.before).until : null;
  // A gang declared separately there must not be ended.
  if (until === null || isGangAt(day, until, track, sources)) return ok([declared]);
  const before = until === 'end' ? undefined : until;
  return ok([declared, placed({ kind: 'gang-ended', track, sources }, { before })]);
}

/** Ends every gang of a track: whoever still shares it clashes from there on, unless ganged again later. */
export function dissolveGang(day: Day, track: PartId, at: Placing = {}): CommandResult {
  if (!day.rig.byId.has(track)) return missing('track', track);
  return ok([placed({ kind: 'gang-declared', track, sources: [] }, at)]);
}

/** Types a name for a track, shown as an exception; an empty name removes it. */
export function nameTrack(day: Day, track: PartId, name: string, at: Placing = {}): CommandResult {
  if (!day.rig.byId.has(track)) return missing('track', track);
  return ok([placed({ kind: 'track-named', track, name: name.trim().slice(0, 200) || null }, at)]);
}

/** Marks who is needed from here on, who rests and who is done. */
export function markNeed(day: Day, voices: readonly VoiceId[], need: Need, at: Placing = {}): CommandResult {
  const unknown = voices.find((id) => !day.voices.has(id));
  if (unknown !== undefined || voices.length === 0) return missing('voice', unknown ?? '');
  return ok([placed({ kind: 'voices-needed', voices: voices.map((voice) => ({ voice, need })) }, at)]);
}
