import { fileNamesOn } from '../../day/files/file-name.ts';
import type { Day, PartId } from '../../day/model.ts';
import { recordersOf, rollOn } from '../../day/recorders/rolling.ts';
import { takesInOrder } from '../../day/takes.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { isOfAnotherDay } from '../log-and-card/other-day.ts';
import { slateKey, stemKey } from '../log-and-card/plain-key.ts';
import { recordedOf } from '../log-and-card/recorded.ts';
import type { Cards } from './match-recorders.ts';
import { recordersOfOneName } from './one-name.ts';

export interface CardsOfDay extends Cards {
  readonly isOtherDay: boolean;
}

/**
 * The recordings of a day with several recorders, apart by recorder: by the originator in the files and their date;
 * where two recorders have one originator, by the rolls and names that only one of them has, or by their clocks.
 */
export function cardsApart(day: Day, found: readonly Recording[], takes: number): CardsOfDay[] {
  const units = new Map<string, { readonly recordings: Recording[]; readonly isOtherDay: boolean }>();
  for (const recording of found) {
    const isOtherDay = isOfAnotherDay(day, recording);
    const originator = recording.files[0]!.bext?.originator.trim() ?? '';
    const key = isOtherDay ? `${originator} ${recording.files[0]!.bext?.originationDate}` : originator;
    const unit = units.get(key) ?? { recordings: [], isOtherDay };
    units.set(key, unit);
    unit.recordings.push(recording);
  }
  return [...units].flatMap(([key, { recordings, isOtherDay }]) =>
    apart(day, recordings, takes).map((of, at) => ({
      key: at === 0 ? key : `${key} ${at + 1}`,
      recordings: of,
      isOtherDay,
    })),
  );
}

function apart(day: Day, recordings: readonly Recording[], takes: number): (readonly Recording[])[] {
  const bySigns = byOwnSigns(day, recordings);
  if (bySigns.length > 1) return bySigns;
  return recordings.length > takes ? recordersOfOneName(recordings) : [recordings];
}

/** A sign of a recorder is a roll or a name that no other has; what has none stays with the most. */
function byOwnSigns(day: Day, recordings: readonly Recording[]): (readonly Recording[])[] {
  const owners = ownersOfSigns(day);
  const groups = new Map<PartId | null, Recording[]>();
  for (const recording of recordings) {
    const { roll, stems } = recordedOf(recording);
    const signs = [
      ...(roll === undefined ? [] : [`roll ${roll}`]),
      ...[...stems].map((stem) => `name ${stem}`),
    ];
    const owner =
      signs.map((sign) => owners.get(sign)).find((one) => one !== undefined && one !== null) ?? null;
    groups.set(owner, [...(groups.get(owner) ?? []), recording]);
  }
  const unsigned = groups.get(null) ?? [];
  groups.delete(null);
  const [most, ...others] = [...groups.values()].sort((a, b) => b.length - a.length);
  return most ? [[...most, ...unsigned], ...others] : [unsigned];
}

/** The one recorder that has a roll or a name; null if several have it. */
function ownersOfSigns(day: Day): Map<string, PartId | null> {
  const owners = new Map<string, PartId | null>();
  const note = (sign: string, recorder: PartId): void => {
    const known = owners.get(sign);
    owners.set(sign, known === undefined || known === recorder ? recorder : null);
  };
  for (const { id } of recordersOf(day)) {
    const names = fileNamesOn(day, id);
    for (const take of takesInOrder(day)) {
      const roll = names.has(take.id) ? slateKey(rollOn(day, take.id, id)) : '';
      if (roll) note(`roll ${roll}`, id);
      const name = names.get(take.id);
      if (name) note(`name ${stemKey(name)}`, id);
    }
  }
  return owners;
}
