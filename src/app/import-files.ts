import type { SealedProblem } from '../exchange/sealed/refusals.ts';
import { readDayFile } from '../facts/day-file/day-file.ts';
import type { DayFile } from '../facts/day-file/day-file-facts.ts';
import { readDayFileLeniently } from '../facts/day-file/salvage-day-file.ts';
import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import { compareStored } from '../facts/stored.ts';
import type { FactId } from '../shared/ids.ts';
import type { Problem, Result } from '../shared/result.ts';

/** A day file, as far as it could be read. */
export interface FileRead {
  readonly name: string;
  /** What can be imported; missing if nothing can. */
  readonly file?: DayFile;
  /** What is wrong with the file, and how many entries it is known to have lost; missing if it is intact. */
  readonly damage?: { readonly problem: Problem; readonly lost: number };
  /** Of a sealed file: everything in it was checked, and only its readable part is in `file`. */
  readonly sealed?: SealedRead;
}

export interface SealedRead {
  /** Batches that were refused, by the reason of each. */
  readonly refused: readonly SealedProblem['code'][];
  /** Batches that need others, or a key, that are not here. */
  readonly waiting: number;
  /** Keeps the batches themselves, once their entries are imported; false if another window keeps the day live. */
  keep(): Promise<boolean>;
}

/** The outcome of importing a set of files. */
export interface Imported {
  readonly days: readonly DayId[];
  /** Distinct entries in the files, how many were new, and how many were then found on the disk. */
  readonly entries: number;
  readonly fresh: number;
  readonly verified: number;
  /** Files that contradict the phone: none of their entries were imported. */
  readonly refused: readonly { readonly name: string; readonly problem: Problem }[];
}

/** Reads a file, or as much of it as possible. */
export function readAsFarAsPossible(name: string, text: string): FileRead {
  const whole = readDayFile(text);
  if (whole.ok) return { name, file: whole.value };
  const salvage = readDayFileLeniently(text);
  if (!salvage.ok) return { name, damage: { problem: whole.problem, lost: 0 } };
  const lost = salvage.value.missing || salvage.value.damaged;
  return { name, file: salvage.value, damage: { problem: whole.problem, lost } };
}

interface Phone {
  /** Adds a file to its day and waits a while for the disk. */
  merge(file: DayFile): Promise<Result<{ readonly fresh: number; readonly leftOut?: readonly FactId[] }>>;
  read(day: DayId): Promise<unknown[]>;
}

/** Imports files of any days in any order, then checks the disk for every one of their entries. */
export async function importFiles(phone: Phone, reads: readonly FileRead[]): Promise<Imported> {
  /** What was imported for each day; the last file to contain an entry counts. */
  const taken = new Map<DayId, Map<FactId, Envelope>>();
  const refused: { name: string; problem: Problem }[] = [];
  let fresh = 0;
  for (const { name, file } of reads) {
    if (!file) continue;
    const merged = await phone.merge(file);
    if (!merged.ok) {
      refused.push({ name, problem: merged.problem });
      continue;
    }
    fresh += merged.value.fresh;
    const out = new Set(merged.value.leftOut);
    const wanted = taken.get(file.day) ?? new Map<FactId, Envelope>();
    for (const fact of file.stored) if (!out.has(fact.id)) wanted.set(fact.id, fact);
    taken.set(file.day, wanted);
  }
  let entries = 0;
  let verified = 0;
  for (const [day, wanted] of taken) {
    const { missing } = compareStored([...wanted.values()], await phone.read(day));
    entries += wanted.size;
    verified += wanted.size - missing.length;
  }
  const days = [...taken.keys()];
  return { days, entries, fresh, verified, refused };
}
