import type { Command } from '../../app/day-store.ts';
import { styleOfDay } from '../../day/filled-header.ts';
import { notesFromCard, startLogFromCard } from '../../reconcile/start-log.ts';
import { ok } from '../../shared/result.ts';
import type { Recording } from '../../wave/recordings.ts';

/** Starts the log from a card, and puts its notes to the takes that came of it: one action, as it is one tap. */
export const startLog = (recordings: readonly Recording[]): readonly Command[] => [
  (day) => startLogFromCard(recordings, styleOfDay(day), day),
  (day) => ok(notesFromCard(day, recordings)),
];
