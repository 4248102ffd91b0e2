import * as sheets from '../../commands/scenes/add-call-sheet.ts';
import { onDay } from './command.ts';

export type { AsideLine, AsideReason } from '../../callsheet/aside-line.ts';
export { type CallSheet, readCallSheet } from '../../callsheet/call-sheet.ts';
export { CAST_CELLS, type CastCell, type SheetPerformer } from '../../callsheet/cast/cast-entry.ts';
export type { UnreadLine, UnreadReason } from '../../callsheet/cast/cast-list.ts';
export type { How } from '../../callsheet/cells/how-found.ts';
export { linesOfPage, type PageText } from '../../callsheet/lines-of-page.ts';
export { readStrip } from '../../callsheet/scenes/cast-strip.ts';
export type { SceneCell, SheetScene } from '../../callsheet/scenes/sheet-scene.ts';
export {
  type PlannedEntry,
  planCast,
  type Recast,
  recastIn,
  turnedRound,
  withPerformersKept,
} from '../../commands/cast/plan-cast.ts';
export { type SeasonPerformer, type SeasonSheet, withSeason } from '../../commands/cast/season-cast.ts';
export { type PlannedScene, planScenes, type SceneEntry } from '../../commands/scenes/add-call-sheet.ts';

export const addCallSheet = onDay(sheets.addCallSheet);
