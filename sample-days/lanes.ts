import type { Day } from '../src/day/model.ts';
import { reportOf } from '../src/report/model.ts';
import { dayPictures } from '../src/report/printed/day-picture.ts';

/** A few takes and tracks of a day, small enough to be part of the app's first picture. */
export interface Lanes {
  readonly takes: readonly { readonly text: string; readonly circled: boolean }[];
  readonly lanes: readonly {
    readonly track: string;
    /** `from` and `to` are takes, both included. */
    readonly bands: readonly {
      readonly from: number;
      readonly to: number;
      readonly name: string;
      readonly state: string;
    }[];
  }[];
}

/** The end of scene 44 and what follows: packs go over to other people, and two children share a track. */
const FROM = '44C/1';
const TAKES = 6;
const TRACKS = ['1', '2', '7', '8', '15', '16'];

/** What the first screen draws of the full sample day, worked out as the picture of a whole day is. */
export function lanesOf(day: Day): Lanes {
  const { columns, rows } = dayPictures(reportOf(day))[0]!;
  const first = columns.findIndex(({ text }) => text === FROM);
  const last = first + TAKES - 1;
  return {
    takes: columns.slice(first, last + 1).map(({ text, circled }) => ({ text, circled })),
    lanes: rows
      .filter(({ number }) => TRACKS.includes(number))
      .map(({ number, bands }) => ({
        track: number,
        bands: bands
          .filter(({ from, to }) => from <= last && to >= first)
          .map(({ from, to, name, state }) => ({
            from: Math.max(from, first) - first,
            to: Math.min(to, last) - first,
            name,
            state,
          })),
      })),
  };
}
