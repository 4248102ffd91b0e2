import type { PlannedEntry, UnreadReason } from '../../app/commands/cast.ts';
import type { VoiceAnswer } from '../../day/answers/voice-answers.ts';
import type { Rig, VoiceKind } from '../../day/model.ts';
import { breakWords, countOf, pathWords } from '../words/chain.ts';

export const KIND_WORD: Record<VoiceKind, string> = {
  performer: 'performer',
  boom: 'boom',
  plant: 'plant',
  feed: 'line feed',
};

/** The chain in one line, or as far as it goes and what is missing there. */
export function chainWords(rig: Rig, { voice, paths }: VoiceAnswer): string {
  const whole = paths.filter(({ broken }) => broken === null);
  if (whole.length > 0) return whole.map((path) => pathWords(rig, path)).join(' + ');
  const [first] = paths;
  if (!first) return '';
  if (first.broken === 'no-transmitter')
    return voice.kind === 'performer' ? 'wears no pack' : 'not plugged in';
  if (first.broken === 'pack-gone') return breakWords(rig, first);
  const far = pathWords(rig, first);
  return far ? `${far}: ${breakWords(rig, first)}` : breakWords(rig, first);
}

/** What adding one call-sheet line would do. */
export function plannedWord({ does, known }: PlannedEntry): string {
  if (does === 'add') return 'new';
  if (does === 'nothing') return 'already in the cast';
  if (known?.struck) return 'brought back';
  return `was ${[known?.part, known?.person].filter(Boolean).join(', ')}`;
}

const counted = (planned: readonly PlannedEntry[], does: PlannedEntry['does']): number =>
  planned.filter((one) => one.does === does).length;

/** What one tap would do: `Add 9, update 2`; empty if there is nothing to do. */
export function toAddWords(planned: readonly PlannedEntry[]): string {
  const fresh = counted(planned, 'add');
  const known = counted(planned, 'describe');
  if (fresh === 0) return known === 0 ? '' : `Update ${known}`;
  return known === 0 ? `Add ${fresh} to the cast` : `Add ${fresh}, update ${known}`;
}

/** What was done: `9 performers added, 2 updated`. */
export function addedWords(planned: readonly PlannedEntry[]): string {
  const fresh = counted(planned, 'add');
  const known = counted(planned, 'describe');
  const said = [fresh > 0 && `${countOf(fresh, 'performer')} added`, known > 0 && `${known} updated`];
  return said.filter(Boolean).join(', ');
}

export const UNREAD_BECAUSE: Record<UnreadReason, string> = {
  'no-name': 'no name in it',
  'not-understood': 'not understood',
  'line-too-long': 'too long for a line of a call sheet',
  'name-too-long': 'the name is too long',
  'number-too-long': 'the number is too long',
  'too-many': 'more lines than are read at once',
};
