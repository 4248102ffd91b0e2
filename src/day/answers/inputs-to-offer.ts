import {
  INPUT_KINDS,
  type InputKind,
  inputOf,
  inputsFitting,
  outputOf,
} from '../../facts/kinds/rig-kinds.ts';
import { isOneOf, type Open } from '../../shared/open-word.ts';
import type { Part, VoiceId } from '../model.ts';
import type { Answers } from './answers.ts';
import type { InputAnswer } from './input-answers.ts';
import type { VoiceAnswer } from './voice-answers.ts';

/** Inputs a hardline can go into, likeliest first. */
const SOCKETS: readonly Open<InputKind>[] = INPUT_KINDS.filter((kind) => inputOf(kind)?.hardline !== 'never');

const socketOrder = ({ input }: InputAnswer): number => SOCKETS.indexOf(input.inputKind ?? 'mic');

/** The inputs a hardline may be plugged into: unconnected ones first, then those with nobody on them. */
export const inputsToOffer = ({ inputs }: Pick<Answers, 'inputs'>): InputAnswer[] =>
  inputs
    .filter((answer) => (answer.state === 'free' || answer.state === 'idle') && socketOrder(answer) >= 0)
    .sort(
      (a, b) =>
        Number(a.state === 'idle') - Number(b.state === 'idle') ||
        socketOrder(a) - socketOrder(b) ||
        a.input.order - b.input.order,
    );

/** Whether the lead of an output fits an input. A kind that only a newer version knows may fit anything. */
export function isFitting({ outputKind = 'analogue' }: Part, { inputKind = 'mic' }: Part): boolean {
  const isKnown = outputOf(outputKind) !== undefined && isOneOf(INPUT_KINDS, inputKind);
  return !isKnown || inputsFitting(outputKind).some((kind) => kind === inputKind);
}

/** Whether a hardline's lead fits an input; one of a kind that only a newer version knows may. */
export const takesHardline = ({ inputKind = 'mic' }: Part): boolean =>
  inputOf(inputKind)?.hardline !== 'never';

const isPlugged = ({ paths }: VoiceAnswer): boolean =>
  paths.some(
    ({ lead, transmitter, input, broken }) => lead && !transmitter && input && broken !== 'pushed-out',
  );

/** The plugged hardlines of the same kind that one could change places with, if it is plugged itself. */
export function swapsFor({ voices }: Pick<Answers, 'voices'>, id: VoiceId): VoiceAnswer[] {
  const own = voices.find(({ voice }) => voice.id === id);
  if (!own || !isPlugged(own)) return [];
  return voices.filter((one) => one !== own && one.voice.kind === own.voice.kind && isPlugged(one));
}
