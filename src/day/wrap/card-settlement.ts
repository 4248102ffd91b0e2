import type { SETTLED_AS } from '../../facts/kinds/card-checked.ts';
import type { HeaderFields } from '../../facts/kinds/day-described.ts';
import type { RecorderSettings } from '../../facts/kinds/recorder-set.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { RateId } from '../../time/rate.ts';
import type { FactId, PartId, TakeId, VoiceId } from '../model.ts';

/** How a difference was settled: as the log or the card has it, or the take's file is missing. */
export type SettledAs = (typeof SETTLED_AS)[number];

/** The identity of a settled difference: the same values mean the same difference. */
export interface DifferenceKey {
  readonly code: string;
  readonly take?: TakeId | undefined;
  /** The file's name, cut to 200 characters. */
  readonly file?: string | undefined;
  readonly track?: PartId | undefined;
  /** The values of log and card and what they are about: if any of that changes, it is another difference. */
  readonly values?: string | undefined;
}

/**
 * One way to resolve a difference between card and log, as data that a command turns into facts. All its
 * names, numbers and text come from foreign files and are only ever treated as text.
 */
export type SettlementChoice =
  /** The takes are as the files have them. */
  | {
      readonly kind: 'describe-takes';
      readonly takes: readonly { readonly take: TakeId; readonly fields: TakeFields }[];
    }
  | { readonly kind: 'describe-day'; readonly fields: HeaderFields }
  /** The recorder was set like the files, from before each of these takes on. */
  | {
      readonly kind: 'set-recorder';
      /** Missing for the first one. */
      readonly recorder?: PartId;
      readonly changes: readonly { readonly settings: RecorderSettings; readonly before: TakeId }[];
    }
  | { readonly kind: 'add-note'; readonly take: TakeId; readonly text: string }
  /** The roll changed before this take and, if the card says so, back before another. */
  | {
      readonly kind: 'change-roll';
      /** Missing for the first recorder. */
      readonly recorder?: PartId;
      readonly roll: string;
      readonly before: TakeId;
      readonly back: { readonly roll: string; readonly before: TakeId } | null;
    }
  /** The track carries the file's name from this take up to `until`, as a typed exception. */
  | {
      readonly kind: 'name-track';
      readonly track: PartId;
      readonly name: string;
      readonly take: TakeId;
      readonly until: TakeId | null;
    }
  /** Changes that were entered late belong before this take. */
  | { readonly kind: 'move-changes'; readonly changes: readonly FactId[]; readonly before: TakeId }
  /** An unlogged recording becomes a take, before the given take or, with null, at the end. */
  | { readonly kind: 'log-recording'; readonly fields: TakeFields; readonly before: TakeId | null }
  | { readonly kind: 'take-back'; readonly take: TakeId }
  /** The recorder showed `frames` when the phone's clock said `atMs`; the takes start as the files do. */
  | {
      readonly kind: 'follow-recorder';
      readonly frames: number;
      readonly rate: RateId;
      readonly atMs: number;
      readonly takes: readonly { readonly take: TakeId; readonly fields: TakeFields }[];
    }
  /** These takes are on a recorder, or are not, as its card shows. */
  | {
      readonly kind: 'correct-rolling';
      readonly recorder: PartId;
      readonly takes: readonly TakeId[];
      readonly isOn: boolean;
    }
  /** What two tracks carry is exchanged from this take up to `until`. */
  | {
      readonly kind: 'swap-tracks';
      readonly swap: TrackSwap;
      readonly take: TakeId;
      readonly until: TakeId | null;
    }
  /** The card has no file for the take, and the report says so. */
  | { readonly kind: 'file-missing' }
  /** The log is kept. */
  | { readonly kind: 'keep-log' };

/** Packs on each other's bodies, or inputs on each other's tracks. */
export type TrackSwap =
  | {
      readonly by: 'packs';
      readonly worn: readonly { readonly transmitter: PartId; readonly voice: VoiceId }[];
    }
  | {
      readonly by: 'inputs';
      readonly routes: readonly { readonly input: PartId; readonly tracks: readonly PartId[] }[];
    };

/** A way to settle a difference, and which difference that is. */
export type CardSettlement = SettlementChoice & { readonly settles: DifferenceKey };
