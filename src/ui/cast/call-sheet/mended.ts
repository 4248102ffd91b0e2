import {
  CAST_CELLS,
  type CallSheet,
  type SceneEntry,
  type SheetPerformer,
  type SheetScene,
} from '../../../app/commands/call-sheet.ts';

/** What a person says of a row, by its first line: a performer, a scene, or nobody. */
export type Mend =
  | {
      readonly as: 'performer';
      readonly entry: Pick<SheetPerformer, 'number' | 'part' | 'person' | 'pickUp' | 'onSet'>;
    }
  | { readonly as: 'scene'; readonly entry: SceneEntry }
  | { readonly as: 'left-out' };
export type Mends = ReadonlyMap<number, Mend>;

const performerOf = (line: number, entry: (Mend & { as: 'performer' })['entry']): SheetPerformer => ({
  ...entry,
  line,
  more: [],
  sure: true,
  how: Object.fromEntries(CAST_CELLS.filter((cell) => entry[cell] !== '').map((cell) => [cell, 'heading'])),
});

const sceneOf = (line: number, entry: SceneEntry): SheetScene => ({ ...entry, lines: [line], how: {} });

/** The sheet with what was mended by hand: a row changed, one left out, or a line read by a person. */
export function withMends(sheet: CallSheet, mends: Mends): CallSheet {
  const isOpen = (line: number): boolean => !mends.has(line);
  const mended = [...mends].sort(([a], [b]) => a - b);
  const cast = mended.flatMap(([line, mend]) =>
    mend.as === 'performer' ? [performerOf(line, mend.entry)] : [],
  );
  const scenes = mended.flatMap(([line, mend]) => (mend.as === 'scene' ? [sceneOf(line, mend.entry)] : []));
  return {
    ...sheet,
    cast: [...sheet.cast.filter(({ line }) => isOpen(line)), ...cast].sort((a, b) => a.line - b.line),
    scenes: [...sheet.scenes.filter(({ lines }) => isOpen(lines[0]!)), ...scenes].sort(
      (a, b) => a.lines[0]! - b.lines[0]!,
    ),
    unread: sheet.unread.filter(({ line }) => isOpen(line)),
    aside: sheet.aside.filter(({ line }) => isOpen(line)),
  };
}
