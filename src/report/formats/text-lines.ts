import type { TakeId } from '../../day/model.ts';
import { isolated } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import { unusedTracks, usedTracks } from '../printed/layout-words.ts';
import { cautionLines } from '../printed/recorder-words.ts';
import { padTo, textWidth, wrapText } from '../printed/text-width.ts';
import type { TrackList } from '../track-lists.ts';

/** Fits a mail that is read, quoted and printed in a fixed-width font (RFC 5322 section 2.1.1). */
export const TEXT_COLUMNS = 72;

/** A part of the report that is printed whole or left out whole. */
export interface TextBlock {
  readonly part: 'head' | 'changes' | 'open' | 'layout' | 'takes' | 'totals' | 'signature';
  /** The take that a block of `takes` covers. */
  readonly take: TakeId | null;
  readonly lines: readonly string[];
}

export const block = (part: TextBlock['part'], lines: readonly string[]): TextBlock => ({
  part,
  take: null,
  lines,
});

/** Lines indented under the lead before the first of them. */
export const hung = (lead: string, lines: readonly string[]): string[] =>
  lines.map((line, at) => ((at === 0 ? lead : ' '.repeat(textWidth(lead))) + line).trimEnd());

export function labelled(pairs: readonly (readonly [string, string])[]): string[] {
  const widest = Math.max(...pairs.map(([label]) => label.length)) + 2;
  return pairs.flatMap(([label, text]) =>
    hung(padTo(label, widest), wrapText(isolated(text), TEXT_COLUMNS - widest)),
  );
}

/** In the first lines: a mail may be read no further. */
export function cautionBlock({ head }: ReportModel): string[] {
  const cautions = cautionLines(head);
  return cautions.length > 0
    ? [...cautions.flatMap((line) => hung('CAUTION: ', wrapText(line, TEXT_COLUMNS - 9))), '']
    : [];
}

export const listed = (text: string): string[] => hung('- ', wrapText(text, TEXT_COLUMNS - 2));

export function layoutLines({ layout }: TrackList): string[] {
  const used = usedTracks(layout);
  const unused = unusedTracks(layout);
  const widest = Math.min(12, Math.max(0, ...used.map(({ number }) => textWidth(number)))) + 4;
  const lines = used.flatMap(({ number, lines }) => {
    const lead = `${' '.repeat(Math.max(0, widest - 2 - textWidth(number)))}${isolated(number)}  `;
    return hung(
      lead,
      lines.flatMap((line) => wrapText(line, TEXT_COLUMNS - textWidth(lead))),
    );
  });
  const none =
    unused.length > 0 ? wrapText(`Nobody on: ${unused.map(isolated).join(', ')}`, TEXT_COLUMNS) : [];
  return [...lines, ...none];
}
