import type { TrackState } from '../../day/answers/track-answers.ts';
import type { PartId, TakeId, TakeKind } from '../../day/model.ts';
import type { Open } from '../../shared/open-word.ts';
import type { ReportModel } from '../model.ts';
import { recordersText } from '../recorders-text.ts';
import type { LayoutSpan } from '../track-layout.ts';
import type { TrackLine } from '../track-lines.ts';
import type { TrackList } from '../track-lists.ts';
import { STATE_WORDS } from './words.ts';

/** One take of the picture. */
export interface PictureColumn {
  readonly takeId: TakeId;
  readonly text: string;
  readonly circled: boolean;
  readonly kind: Open<TakeKind>;
  /** Another slate begins here, or a wild track or room tone between slates. */
  readonly startsSetup: boolean;
}

/** Who was on a track over a run of takes. `from` and `to` are columns, both included. */
export interface PictureBand {
  readonly from: number;
  readonly to: number;
  readonly fromTake: TakeId;
  readonly state: TrackState;
  readonly name: string;
  /** `'ganged'`, `'clash'`, `'muted'`; empty for one voice. The shape shows the same. */
  readonly word: string;
  readonly typed: boolean;
}

export interface PictureRow {
  readonly track: PartId;
  readonly number: string;
  readonly bands: readonly PictureBand[];
}

/** Takes along one axis, tracks along the other: who was on which track. Only used tracks have a row. */
export interface DayPicture {
  readonly columns: readonly PictureColumn[];
  readonly rows: readonly PictureRow[];
}

/** The pictures of a day: one for each recorder with its own tracks, of the takes that it has. */
export const dayPictures = ({ lists }: ReportModel): (DayPicture & Pick<TrackList, 'on' | 'owner'>)[] =>
  lists.map((list) => ({ on: list.on, owner: list.owner, ...dayPicture(list) }));

/** `'Who was on which track'`, `'Who was on which track on Bag'`. */
export const pictureTitle = ({ on }: Pick<TrackList, 'on'>): string =>
  `Who was on which track${on.length > 0 ? ` on ${recordersText(on)}` : ''}`;

/** The picture of a day. MOS takes have a column but no sound: bands continue across them. */
export function dayPicture({ layout, takes }: Pick<TrackList, 'layout' | 'takes'>): DayPicture {
  return {
    columns: takes.map((take, at) => ({
      takeId: take.takeId,
      text: take.text,
      circled: take.circled,
      kind: take.kind,
      startsSetup: at > 0 && setupOf(take) !== setupOf(takes[at - 1]!),
    })),
    rows: layout
      .map(({ track, number, spans }) => ({ track, number, bands: spans.flatMap(bandOf) }))
      .filter(({ bands }) => bands.length > 0),
  };
}

const setupOf = ({ slate, kind }: { slate: string; kind: Open<TakeKind> }): string => slate || kind;

const bandOf = ({ from, to, fromTake, line }: LayoutSpan): PictureBand[] =>
  line && fromTake
    ? [{ from, to, fromTake, state: line.state, name: line.name, word: wordOf(line), typed: line.typed }]
    : [];

const wordOf = ({ state }: TrackLine): string => (state === 'mix' ? '' : STATE_WORDS[state]);

/** The part of a band in one part of the picture; it may continue on either side. */
export interface BandPiece extends PictureBand {
  readonly comesFrom: boolean;
  readonly goesOn: boolean;
}

export interface PicturePart {
  /** The first column of this part. */
  readonly first: number;
  readonly columns: readonly PictureColumn[];
  readonly rows: readonly { readonly number: string; readonly bands: readonly BandPiece[] }[];
}

/** The picture in parts of at most `most` takes, of about equal length, set below each other. */
export function pictureParts({ columns, rows }: DayPicture, most: number): PicturePart[] {
  const count = Math.ceil(columns.length / most);
  const size = Math.ceil(columns.length / Math.max(1, count));
  return Array.from({ length: count }, (_, at) => {
    const first = at * size;
    const last = Math.min(columns.length, first + size) - 1;
    return {
      first,
      columns: columns.slice(first, last + 1),
      rows: rows.map(({ number, bands }) => ({
        number,
        bands: bands
          .filter(({ from, to }) => from <= last && to >= first)
          .map((band) => ({
            ...band,
            from: Math.max(band.from, first) - first,
            to: Math.min(band.to, last) - first,
            comesFrom: band.from < first,
            goesOn: band.to > last,
          })),
      })),
    };
  });
}
