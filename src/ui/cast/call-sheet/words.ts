import type {
  AsideReason,
  How,
  PlannedEntry,
  PlannedScene,
  SeasonPerformer,
  UnreadReason,
} from '../../../app/commands/call-sheet.ts';
import { countOf } from '../../words/chain.ts';
import { asOnWords } from '../../words/known-days.ts';

/** Whether any cell of a row was guessed. */
export const isGuessed = ({ how }: { readonly how: Readonly<Partial<Record<string, How>>> }): boolean =>
  Object.values(how).includes('guessed');

/** What of a row is not on the sheet but on an earlier day: `'performer as on 12 March'`; empty for nothing. */
export function carriedWords({ known, how }: SeasonPerformer): string {
  const carried = [how.part === 'carried' && 'part', how.person === 'carried' && 'performer'].filter(Boolean);
  return known && carried.length > 0 ? `${carried.join(' and ')} ${asOnWords(known.date)}` : '';
}

/** What adding one call-sheet line would do. */
export function plannedWord({ does, known }: PlannedEntry): string {
  if (does === 'add') return 'new';
  if (does === 'nothing') return 'already in the cast';
  if (known?.struck) return 'brought back';
  return `was ${[known?.part, known?.person].filter(Boolean).join(', ')}`;
}

/** What adding a scene would do. */
export function plannedSceneWord({ does }: PlannedScene): string {
  if (does === 'add') return 'new';
  return does === 'nothing' ? 'already on the list' : 'changed';
}

type Planned = { readonly does: PlannedEntry['does']; readonly twice: boolean };
const counted = (planned: readonly Planned[], does: PlannedEntry['does']): number =>
  planned.filter((one) => one.does === does).length;
/** A scene in two rows is one scene. */
const each = (scenes: readonly PlannedScene[]): PlannedScene[] => scenes.filter(({ twice }) => !twice);

/** What one tap would do: `Add 9, update 2`, `Add 9 to the cast and 12 scenes`; empty if there is nothing to do. */
export function toAddWords(people: readonly PlannedEntry[], scenes: readonly PlannedScene[] = []): string {
  const one = each(scenes);
  const [fresh, known] = [counted(people, 'add'), counted(people, 'describe')];
  const [freshScenes, knownScenes] = [counted(one, 'add'), counted(one, 'describe')];
  if (freshScenes + knownScenes === 0) {
    if (fresh === 0) return known === 0 ? '' : `Update ${known}`;
    return known === 0 ? `Add ${fresh} to the cast` : `Add ${fresh}, update ${known}`;
  }
  const adding = [fresh > 0 && `${fresh} to the cast`, freshScenes > 0 && countOf(freshScenes, 'scene')];
  const added = adding.filter(Boolean).join(' and ');
  const updated = known + knownScenes;
  return [added && `Add ${added}`, updated > 0 && `${added ? 'update' : 'Update'} ${updated}`]
    .filter(Boolean)
    .join(', ');
}

/** What was done: `9 performers added, 2 updated`. */
export function addedWords(people: readonly PlannedEntry[], scenes: readonly PlannedScene[] = []): string {
  const one = each(scenes);
  const [fresh, known] = [counted(people, 'add'), counted(people, 'describe')];
  const freshScenes = counted(one, 'add');
  const updated = known + counted(one, 'describe');
  const added = [fresh > 0 && countOf(fresh, 'performer'), freshScenes > 0 && countOf(freshScenes, 'scene')];
  const said = [added.filter(Boolean).join(' and '), updated > 0 && `${updated} updated`];
  return said
    .map((words, at) => (at === 0 && words ? `${words} added` : words))
    .filter(Boolean)
    .join(', ');
}

export const UNREAD_BECAUSE: Record<UnreadReason, string> = {
  'no-name': 'no name in it',
  'not-understood': 'not understood',
  'line-too-long': 'too long for a line of a call sheet',
  'name-too-long': 'the name is too long',
  'number-too-long': 'the number is too long',
  'too-many': 'more lines than are read at once',
};

export const ASIDE_AS: Record<AsideReason, string> = {
  note: 'a note',
  crowd: 'background',
  'other-day': 'another day',
  'other-section': 'crew and other matters',
};
