import { INPUT_KINDS, type InputKind, inputOf } from '../../facts/kinds/rig-kinds.ts';
import type { Open } from '../../shared/open-word.ts';
import type { Answers } from './answers.ts';
import type { InputAnswer } from './input-answers.ts';

/** Inputs a hardline can go into, likeliest first. */
const SOCKETS: readonly Open<InputKind>[] = INPUT_KINDS.filter((kind) => inputOf(kind)?.hardline !== 'never');

const socketOrder = ({ input }: InputAnswer): number => SOCKETS.indexOf(input.inputKind ?? 'mic');

/** The inputs a hardline may be plugged into: unconnected ones first, then those with nobody on them. */
export const inputsToOffer = ({ inputs }: Answers): InputAnswer[] =>
  inputs
    .filter((answer) => (answer.state === 'free' || answer.state === 'idle') && socketOrder(answer) >= 0)
    .sort(
      (a, b) =>
        Number(a.state === 'idle') - Number(b.state === 'idle') ||
        socketOrder(a) - socketOrder(b) ||
        a.input.order - b.input.order,
    );
