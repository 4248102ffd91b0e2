/** A voice that a setup may want: a performer, or a hardline mic (boom, plant, line feed) by its own source. */
export interface PlanVoice {
  readonly id: string;
  /** 0 is the most important; equal numbers are equally important. */
  readonly priority: number;
  readonly needed: boolean;
  /** Certainly finished, so that the pack will not be wanted back. */
  readonly done: boolean;
  /** The source id a hardline voice arrives by; such a voice wears no transmitter unless it may. */
  readonly hardline?: string;
  /** Of a hardline voice: it can be heard by a transmitter instead, and is where one is pinned. */
  readonly mayWear?: boolean;
  readonly pinnedTransmitter?: string;
  readonly pinnedChannel?: string;
  readonly pinnedInput?: string;
  readonly pinnedTrack?: string;
  /** Pinned alone: never in a gang. */
  readonly alone?: boolean;
  /** The track that carried this voice the last time it was recorded. */
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
  readonly out?: boolean;
  readonly tunedTo?: string;
  /** The transmitters it can be tuned to; every one where absent. */
  readonly canTune?: readonly string[];
  /** What retuning it costs; `weights.retune` where absent. */
  readonly weight?: number;
}

export interface PlanSelector {
  readonly id: string;
  readonly position: string;
  /** What throwing it costs; `weights.throwSelector` where absent. */
  readonly weight?: number;
}

/** One way from a source (a channel, or a hardline voice's own) to an input. */
export interface PlanPath {
  readonly id: string;
  readonly source: string;
  readonly input: string;
  /** The lead it runs on; one lead can be plugged in one place only, and one place takes one lead. */
  readonly lead: string;
  readonly plugged: boolean;
  /** The place it ends at is behind a selector, and is heard in this position only. */
  readonly selector?: { readonly id: string; readonly position: string };
  readonly out?: boolean;
  /** What plugging it costs; `weights.replug` where absent. */
  readonly weight?: number;
}

export interface PlanInput {
  readonly id: string;
  readonly out?: boolean;
  /** The iso track it feeds now. */
  readonly track?: string;
  /** The iso tracks it could feed; only the one it feeds where absent. */
  readonly mayFeed?: readonly string[];
  /** It can be summed with others on one track. */
  readonly canGang: boolean;
  /** What sending it to another track costs; `weights.route` where absent. */
  readonly weight?: number;
}

export interface PlanTrack {
  readonly id: string;
  /** Only iso tracks are planned; a mix track is nobody's own. */
  readonly iso: boolean;
  readonly out?: boolean;
  readonly gangAllowed: boolean;
}

/** Whole numbers. The first three belong to the third order and are at least 1, the others to the fourth. */
export interface PlanWeights {
  /** A pack nobody wears is fitted. */
  readonly fit: number;
  /** A pack goes from one body to another. */
  readonly move: number;
  /** The same, from somebody who is not needed now but not done either, and will want it back. */
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
 * The chain as it stands and the people needed next. People who are not needed are taken to be silent: they keep
 * their packs until somebody needs one, and occupy no track.
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

/** Orders ids so that A2 comes before A10: by length, then by character. */
export const byId = (a: { readonly id: string }, b: { readonly id: string }): number =>
  a.id.length - b.id.length || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
