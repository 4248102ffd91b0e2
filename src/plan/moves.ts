/** Why a move is proposed; `ui` turns the code into a sentence. */
export type MoveReason =
  | { readonly code: 'pack-out'; readonly voice: string }
  | {
      readonly code: 'given-to';
      readonly voice: string;
      readonly wearer: 'done' | 'waiting' | 'left-out' | 'moved';
    }
  | { readonly code: 'not-used'; readonly voice: string }
  | { readonly code: 'has-no-pack'; readonly voice: string }
  | { readonly code: 'pack-given-away'; readonly voice: string; readonly to: string }
  | { readonly code: 'other-pack'; readonly voice: string }
  | { readonly code: 'to-hear'; readonly voice: string }
  | { readonly code: 'last-track'; readonly voice: string }
  | { readonly code: 'own-track'; readonly voice: string }
  | { readonly code: 'gang'; readonly voice: string; readonly others: readonly string[] };

/** One thing for a utility or the mixer to do. */
export type Move =
  | {
      readonly kind: 'take';
      readonly transmitter: string;
      readonly from: string;
      readonly because: MoveReason;
    }
  | { readonly kind: 'fit'; readonly transmitter: string; readonly to: string; readonly because: MoveReason }
  | {
      readonly kind: 'throw';
      readonly selector: string;
      readonly from: string;
      readonly to: string;
      readonly because: MoveReason;
    }
  | {
      readonly kind: 'replug';
      readonly path: string;
      readonly lead: string;
      readonly source: string;
      readonly input: string;
      readonly because: MoveReason;
    }
  | {
      readonly kind: 'retune';
      readonly channel: string;
      readonly from?: string;
      readonly to: string;
      /** The channels that leave that transmitter for none: it must not arrive twice. */
      readonly leaving?: readonly string[];
      readonly because: MoveReason;
    }
  | {
      readonly kind: 'route';
      readonly input: string;
      readonly from?: string;
      readonly to: string;
      readonly because: MoveReason;
    };

/** A needed voice and the whole chain that records it. */
export interface RecordedVoice {
  readonly voice: string;
  /** Missing for a hardline voice. */
  readonly transmitter?: string;
  /** The channel, or the hardline voice's own source. */
  readonly source: string;
  readonly path: string;
  readonly input: string;
  readonly track: string;
  /** The voices it shares the track with. */
  readonly gangedWith: readonly string[];
  /** False if it was last on another track. */
  readonly keepsTrack: boolean;
}
