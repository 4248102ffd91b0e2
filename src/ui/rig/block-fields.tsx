import type { Day, Part, PartId, Rig } from '../../day/model.ts';
import { partName } from '../words/chain.ts';
import { ofRecorder } from '../words/recorder-names.ts';
import type { Option } from './picker.tsx';

/** A receiver, or one of its modules, as one choice. */
export interface Block {
  readonly id: string;
  readonly name: string;
  readonly receiver: PartId;
  readonly module: string | undefined;
}

/** Every receiver, and each of its modules if it has more than one. */
export function blocksOf(rig: Rig): Block[] {
  return rig.receivers.flatMap(({ id, name }) => {
    const own = rig.channels.filter(({ receiver }) => receiver === id);
    const modules = [...new Set(own.map(({ module }) => module ?? ''))];
    const whole: Block = { id: `${id}|`, name, receiver: id, module: undefined };
    if (modules.length < 2) return [whole];
    return [
      ...modules.map((module) => ({
        id: `${id}|${module}`,
        name: `${name}, ${module || 'no module'}`,
        receiver: id,
        module,
      })),
      { ...whole, name: `${name}, all modules` },
    ];
  });
}

export const channelsIn = (rig: Rig, { receiver, module }: Block): Part[] =>
  rig.channels.filter(
    (channel) => channel.receiver === receiver && (module === undefined || (channel.module ?? '') === module),
  );

/** Parts to choose from, each with its recorder where there are several. */
export const asOptions = (day: Day, parts: readonly Part[]): Option[] =>
  parts.map((part) => ({
    id: part.id,
    name: [part.name, part.type === 'input' && ofRecorder(day, part)].filter(Boolean).join(', '),
  }));

export interface Pair {
  readonly from: Part;
  readonly to: Part;
  /** What has to make room for it. */
  readonly out?: string;
}

interface PairsProps {
  readonly rig: Rig;
  readonly pairs: readonly Pair[];
  readonly left: readonly Part[];
  /** The word between the two of a pair, such as `into`. */
  readonly word: string;
}

/** What will be paired one to one, and what is left over. */
export function Pairs({ rig, pairs, left, word }: PairsProps) {
  return (
    <>
      <ul class="pairs" aria-label="What will be done">
        {pairs.map(({ from, to, out }) => (
          <li key={from.id}>
            <strong>{from.name}</strong> <span class="soft">{word}</span> <strong>{to.name}</strong>
            {out && <span class="soft">, {out} comes out</span>}
          </li>
        ))}
      </ul>
      {left.length > 0 && (
        <p class="warn">
          Left over: {left.map(({ id }) => partName(rig, id)).join(', ')}. Choose another place for them
          after.
        </p>
      )}
    </>
  );
}
