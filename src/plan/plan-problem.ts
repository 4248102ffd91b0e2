/** A voice that a setup may need: a performer, or a hardline mic (boom, plant, line feed). */
export interface PlanVoice {
  readonly id: string;
  /** 0 is the most important; equal numbers are equally important. */
  readonly priority: number;
  readonly needed: boolean;
  /** Certainly finished, so the pack will not be wanted back. */
  readonly done: boolean;
  /** The source id of a hardline voice; it wears no transmitter unless `mayWear`. */
  readonly hardline?: string;
  /** Hardline voices: it can use a transmitter instead, and does if one is pinned. */
  readonly mayWear?: boolean;
  readonly pinnedTransmitter?: string;
  readonly pinnedChannel?: string;
  readonly pinnedInput?: string;
  readonly pinnedTrack?: string;
  /** Pinned alone: never in a gang. */
  readonly alone?: boolean;
  /**
   * Waiting now, but needed again so many scenes after the next setup's: 1 is the scene right after. Missing if
   * in none of the scenes looked at.
   */
  readonly neededAgain?: number;
  /** The track it was last recorded on. */
  readonly lastTrack?: string;
}

export interface PlanTransmitter {
  readonly id: string;
  /** Dead, lost, or on a noisy frequency. */
  readonly out?: boolean;
  readonly wornBy?: string;
}

export interface PlanChannel {
  readonly id: string;
  /** Its place in reading order: leads that cost the same do not cross. */
  readonly place?: number;
  readonly out?: boolean;
  readonly tunedTo?: string;
  /** Another recorder hears it too: it is not tuned away so that its pack arrives once. */
  readonly stays?: boolean;
  /** The transmitters it can be tuned to; all if missing. */
  readonly canTune?: readonly string[];
  /** The cost of retuning it; `weights.retune` if missing. */
  readonly weight?: number;
}

export interface PlanSelector {
  readonly id: string;
  readonly position: string;
  /** The cost of throwing it; `weights.throwSelector` if missing. */
  readonly weight?: number;
}

/** One route from a source (a channel, or a hardline voice's own) to an input. */
export interface PlanPath {
  readonly id: string;
  readonly source: string;
  readonly input: string;
  /** Its lead; one lead goes to one place only, and one place takes one lead. */
  readonly lead: string;
  readonly plugged: boolean;
  /** It ends behind a selector, and is heard only in this position. */
  readonly selector?: { readonly id: string; readonly position: string };
  readonly out?: boolean;
  /** The cost of plugging it; `weights.replug` if missing. */
  readonly weight?: number;
}

export interface PlanInput {
  readonly id: string;
  /** Its place in reading order: leads that cost the same go to the first. */
  readonly place?: number;
  readonly out?: boolean;
  /** The iso track it feeds now. */
  readonly track?: string;
  /** The iso tracks it could feed; only its current one if missing. */
  readonly mayFeed?: readonly string[];
  /** It can be summed with others on one track. */
  readonly canGang: boolean;
  /** The cost of sending it to another track; `weights.route` if missing. */
  readonly weight?: number;
}

export interface PlanTrack {
  readonly id: string;
  /** Only iso tracks are planned; nobody owns a mix track. */
  readonly iso: boolean;
  readonly out?: boolean;
  readonly gangAllowed: boolean;
}

/** How many scenes after the next setup's are looked at. */
export const SCENES_AHEAD = 3;

/** Whole numbers. The first three belong to the third order and are at least 1, others to the fourth. */
export interface PlanWeights {
  /** A free pack is fitted. */
  readonly fit: number;
  /** A pack goes from one body to another. */
  readonly move: number;
  /** The same, from somebody not needed now but not done, who will want it back. */
  readonly borrow: number;
  readonly retune: number;
  readonly throwSelector: number;
  readonly replug: number;
  readonly route: number;
}

/** One of everything; a borrowed pack has to come back, so it counts twice. */
export const PLAIN_WEIGHTS: PlanWeights = {
  fit: 1,
  move: 1,
  borrow: 2,
  retune: 1,
  throwSelector: 1,
  replug: 1,
  route: 1,
};

/**
 * The chain as it stands and the people needed next. Others are taken to be silent: they keep their packs
 * until somebody needs one, and occupy no track.
 */
export interface PlanProblem {
  readonly voices: readonly PlanVoice[];
  readonly transmitters: readonly PlanTransmitter[];
  readonly channels: readonly PlanChannel[];
  readonly selectors: readonly PlanSelector[];
  readonly paths: readonly PlanPath[];
  readonly inputs: readonly PlanInput[];
  readonly tracks: readonly PlanTrack[];
  readonly weights: PlanWeights;
}

/** Sorts ids so that A2 comes before A10: by length, then by character. */
export const byId = (a: { readonly id: string }, b: { readonly id: string }): number =>
  a.id.length - b.id.length || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
