import * as settling from '../../commands/line/settle-card.ts';
import { styleOfDay } from '../../day/header.ts';
import { checkedCard, type FilesRead } from '../../reconcile/checked-card.ts';
import type { Difference } from '../../reconcile/differences/difference.ts';
import type { CardMatch } from '../../reconcile/pairing/match-recordings.ts';
import { notesFromCard, startLogFromCard } from '../../reconcile/start-log.ts';
import { ok } from '../../shared/result.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import type { Command } from '../day-store.ts';
import { onDay } from './command.ts';

export const settleAll = onDay(settling.settleAll);
/** Records that the card was checked, for the report. */
export const noteCardCheck =
  (match: CardMatch, differences: readonly Difference[], read: FilesRead): Command =>
  (day) =>
    settling.noteCardCheck(checkedCard(day, match, differences, read));

/** Starts the log from a card and attaches its notes to the new takes, as one undoable action. */
export const startLog = (recordings: readonly Recording[]): readonly Command[] => [
  (day) => startLogFromCard(recordings, styleOfDay(day), day),
  (day) => ok(notesFromCard(day, recordings)),
];
