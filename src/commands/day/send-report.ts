import type { ReportFrom, ReportMade } from '../../facts/kinds/report-sent.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';

/** What left the phone. */
export interface Outgoing {
  readonly letter: string;
  readonly route: 'share' | 'download' | 'copy' | 'mail';
  readonly files: readonly string[];
  readonly to: readonly string[];
  readonly made: ReportMade;
  readonly from: ReportFrom;
}

const MOST_FILES = 20;
const MOST_ADDRESSES = 50;
const LONGEST = 200;

/** Records that a report was sent. It already happened, so this never fails: long texts are cut. */
export function noteSent({ letter, route, files, to, made, from }: Outgoing): CommandResult {
  const short = (texts: readonly string[], most: number) =>
    texts.slice(0, most).map((text) => text.slice(0, LONGEST));
  return ok([
    {
      kind: 'report-sent',
      letter,
      route,
      files: short(files, MOST_FILES),
      to: short(to, MOST_ADDRESSES),
      made,
      from,
    },
  ]);
}
