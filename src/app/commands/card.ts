import * as settling from '../../commands/line/settle-card.ts';
import { styleOfDay } from '../../day/header.ts';
import { notesFromCard, startLogFromCard } from '../../reconcile/start-log.ts';
import { ok } from '../../shared/result.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import type { Command } from '../day-store.ts';
import { onAnyDay, onDay } from './command.ts';

export const settleCard = onDay(settling.settleCard);
export const settleAll = onDay(settling.settleAll);
export const noteCardCheck = onAnyDay(settling.noteCardCheck);

/** Starts the log from a card and attaches its notes to the new takes, as one undoable action. */
export const startLog = (recordings: readonly Recording[]): readonly Command[] => [
  (day) => startLogFromCard(recordings, styleOfDay(day), day),
  (day) => ok(notesFromCard(day, recordings)),
];
