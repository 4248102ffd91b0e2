import type { PartFields, PartType } from '../../facts/kinds/part-described.ts';
import type { VoiceFields } from '../../facts/kinds/voice-described.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { Part, Rig, Voice, VoiceId } from '../model.ts';

export const EMPTY_RIG: Rig = {
  byId: new Map(),
  recorders: [],
  inputs: [],
  tracks: [],
  sends: [],
  receivers: [],
  channels: [],
  outputs: [],
  selectors: [],
  transmitters: [],
};

const LIST_OF: Record<PartType, Exclude<keyof Rig, 'byId'>> = {
  recorder: 'recorders',
  input: 'inputs',
  track: 'tracks',
  send: 'sends',
  receiver: 'receivers',
  channel: 'channels',
  output: 'outputs',
  selector: 'selectors',
  transmitter: 'transmitters',
};

/** A part of a type that only a newer version knows is in no list. */
const LISTED = Object.keys(LIST_OF) as (keyof typeof LIST_OF)[];

const UNRANKED = 500;

export function mergeVoice(old: Voice | undefined, id: VoiceId, fields: VoiceFields): Voice {
  const blank: Voice = {
    id,
    kind: 'performer',
    part: '',
    person: '',
    number: '',
    priority: UNRANKED,
    place: '',
    pickUp: '',
    onSet: '',
    struck: false,
  };
  return { ...blank, ...old, ...(fields as Partial<Voice>) };
}

/** The parts so far. The rig's lists are rebuilt only after it changed. */
export class PartsList {
  readonly #parts = new Map<string, Part>();
  #rig: Rig;
  #stale = false;

  constructor(rig: Rig) {
    this.#rig = rig;
  }

  merge(said: readonly { readonly part: string; readonly fields: PartFields }[]): void {
    for (const { part, fields } of said) {
      const old = this.#parts.get(part);
      const blank: Part = { id: part, type: 'input', name: part, order: this.#parts.size };
      this.#parts.set(part, { ...blank, ...old, ...fields } as Part);
    }
    this.#stale = true;
  }

  rig(): Rig {
    if (this.#stale) this.#rig = listed(this.#parts);
    this.#stale = false;
    return this.#rig;
  }
}

function listed(parts: ReadonlyMap<string, Part>): Rig {
  const present = [...parts.values()].filter(({ struck }) => !struck);
  present.sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  const lists: Record<Exclude<keyof Rig, 'byId'>, Part[]> = {
    recorders: [],
    inputs: [],
    tracks: [],
    sends: [],
    receivers: [],
    channels: [],
    outputs: [],
    selectors: [],
    transmitters: [],
  };
  for (const part of present) if (isOneOf(LISTED, part.type)) lists[LIST_OF[part.type]].push(part);
  return { byId: new Map(present.map((part) => [part.id, part])), ...lists };
}
