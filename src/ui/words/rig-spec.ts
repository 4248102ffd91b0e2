import { type RigSpec, shapeOf } from '../../app/commands/rig.ts';
import type { InputKind } from '../../day/model.ts';
import { type Open, wordIn } from '../../shared/open-word.ts';
import { countOf } from './chain.ts';
import { INPUT_KIND_WORD } from './connectors.ts';

const MANY: Record<InputKind, string> = {
  mic: 'mic',
  line: 'line',
  aes3: 'AES3',
  return: 'returns',
  slot: 'slots',
  network: 'network',
};

export const kindCount = (kind: Open<InputKind>, count: number): string =>
  `${count} ${wordIn(count === 1 ? INPUT_KIND_WORD : MANY, kind)}`;

/** What was understood of a rig described in a line. */
export function specWords(spec: RigSpec): string {
  const { inputs, isos, sharing } = shapeOf(spec);
  const kinds = spec.inputs.map(({ kind, count }) => kindCount(kind, count)).join(', ');
  const tracks = `Track 1 is the mix, ${countOf(isos, 'iso track')}. ${countOf(inputs, 'input')}: ${kinds}.`;
  if (isos === 0) return `${tracks} No input has an iso track.`;
  return sharing > 0
    ? `${tracks} The last ${sharing} inputs share track ${spec.tracks}.`
    : `${tracks} Each input has a track of its own.`;
}
