import type { InputState } from '../../day/answers/input-answers.ts';
import { type TrackAnswer, type TrackState, voiceName } from '../../day/answers/track-answers.ts';
import type { Break, Path, VoiceState } from '../../day/answers/voice-answers.ts';
import type { Day, Rig } from '../../day/model.ts';
import type { MarkState } from '../kit/mark.tsx';

export const partName = (rig: Rig, id: string | null | undefined): string =>
  id ? (rig.byId.get(id)?.name ?? id) : '';

const STEP = ' › ';

/** The chain in one line: `A3 › near 3 › AES 3`. */
export function pathWords(rig: Rig, path: Path): string {
  const input = partName(rig, path.input);
  const steps = path.transmitter
    ? [partName(rig, path.transmitter), partName(rig, path.channel), input]
    : ['hardline', input];
  // A slot and the internal receiver in it often have the same name.
  return steps.filter((step, at) => step !== '' && step !== steps[at - 1]).join(STEP);
}

/** Where a chain breaks: what is missing, and after what. */
export function breakWords(rig: Rig, path: Path): string {
  const sentences: Record<Break, () => string> = {
    'no-transmitter': () => 'wears no pack',
    'pack-gone': () => 'no longer wears a pack',
    'no-channel': () => `no receiver channel is tuned to ${partName(rig, path.transmitter)}`,
    'no-output': () => `${partName(rig, path.channel)} has no output`,
    'no-lead': () => (path.output ? `no lead from ${partName(rig, path.output)}` : 'not plugged in'),
    'lead-hangs': () => `the lead from ${partName(rig, path.output) || 'here'} is not plugged in`,
    'pushed-out': () => `another lead is in ${partName(rig, path.input)}`,
    'switched-away': () => `${partName(rig, path.selector)} is thrown the other way`,
    'no-track': () => `${partName(rig, path.input)} feeds no iso track`,
  };
  return path.broken ? sentences[path.broken]() : '';
}

/** What mutes a voice along its path: `A1 muted`, or at the recorder `AES 1 muted`. */
export function mutedWords(rig: Rig, tracks: readonly TrackAnswer[], voice: string): string {
  const ways = tracks.flatMap(({ heard }) => heard.filter((one) => one.voice === voice && one.muted));
  const parts = ways.map(({ source, input }) => (source.mutedAtBody ? source.transmitter : input));
  return `${listOf([...new Set(parts.map((id) => partName(rig, id)))])} muted`;
}

export const TRACK_WORD: Record<TrackState, string> = {
  mix: '',
  empty: '',
  single: '',
  gang: 'gang',
  clash: 'clash',
  muted: 'muted',
};

export const INPUT_WORD: Record<InputState, string> = {
  free: 'free',
  idle: 'idle',
  single: '',
  gang: 'gang',
  clash: 'clash',
  muted: 'muted',
  reserved: 'reserved',
};

export const VOICE_WORD: Record<VoiceState, string> = {
  alone: '',
  gang: 'ganged',
  clash: 'clash',
  muted: 'muted',
  unrecorded: 'not recorded',
  off: 'off',
};

export const VOICE_MARK: Record<VoiceState, MarkState> = {
  alone: 'single',
  gang: 'gang',
  clash: 'clash',
  muted: 'muted',
  unrecorded: 'broken',
  off: 'free',
};

/** Who is on a track, next to its name: a mix named only "mix" or by number is just the mix. */
export const onTrackWords = ({ state, name }: Pick<TrackAnswer, 'state' | 'name'>, label: string): string =>
  state === 'mix' && name.trim() === label ? 'Mix' : name;

/** A list of names: `Pol, Sana and Jo`. */
export function listOf(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

export const nameOf = (day: Day, voice: string | null): string => (voice ? voiceName(day, voice) : 'nobody');

export const countOf = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
