import type { Copies } from '../app/restore.ts';
import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import type { FactId } from '../shared/ids.ts';
import { type Answered, type Asked, dayOf, folderOf, NOTHING_COPIED } from './copy-asked.ts';
import { copies, filesIn } from './copy-files.ts';
import { linesOf } from './copy-lines.ts';

/**
 * A second copy of every fact, in files beside the database. Chromium has been seen to replace its database
 * with an empty one after being killed during a write; the files survive that. Clearing site data or losing
 * the phone takes both, so this does not replace a copy off the phone.
 */
export interface CopyBeside extends Copies {
  /** Writes one action's facts, the `unsure` ones unchecked; never rejects. False if unsupported. */
  keep(facts: readonly Envelope[], unsure?: ReadonlySet<FactId>): Promise<boolean>;
  /** Removes every copy of a day. What cannot be removed is never read again, and retried at next start. */
  forget(day: DayId): Promise<void>;
}

/** Nothing waits longer than this for the copy. */
const ANSWER_WITHIN_MS = 2000;

/** The copies on this phone; `window` names this window's file among them. */
export function copyBeside(window: string): CopyBeside {
  const ask = asking();
  const forget = async (day: DayId): Promise<void> => {
    noteToForget([...stillToForget(), day]);
    if ((await ask({ to: 'forget', folder: folderOf(day) })).done)
      noteToForget(stillToForget().filter((one) => one !== day));
  };
  return {
    async keep(facts, unsure) {
      const answers = linesOf(facts, unsure).map(([day, line]) =>
        ask({ to: 'keep', folder: folderOf(day), file: `${window}.txt`, line }),
      );
      return (await Promise.all(answers)).every(({ done }) => done);
    },
    forget,
    async finishForgetting() {
      for (const day of stillToForget()) await forget(day);
    },
    async days() {
      const erased = new Set(stillToForget());
      const found = (await foldersWithDates()).sort((a, b) => b.writtenMs - a.writtenMs);
      return found.map(({ name }) => dayOf(name)).filter((day) => !erased.has(day));
    },
    align: async (day) => (await ask({ to: 'align', folder: folderOf(day) })).onlyCopied,
  };
}

/** Days whose copy could not be erased; the ids say nothing about anybody. */
const TO_FORGET = 'rollbook-erased';

const stillToForget = (): DayId[] => localStorage.getItem(TO_FORGET)?.split(' ') ?? [];

function noteToForget(days: readonly DayId[]): void {
  if (days.length === 0) localStorage.removeItem(TO_FORGET);
  else localStorage.setItem(TO_FORGET, [...new Set(days)].join(' '));
}

/** The folders of the days, with the time of the last write in each, UTC ms. */
async function foldersWithDates(): Promise<{ readonly name: string; readonly writtenMs: number }[]> {
  const found: { name: string; writtenMs: number }[] = [];
  try {
    for await (const day of (await copies()).values())
      if (day.kind === 'directory')
        found.push({ name: day.name, writtenMs: await writtenMs(day as FileSystemDirectoryHandle) });
  } catch {
    // This browser has no such files.
  }
  return found;
}

/** 0 for a day that is being erased. */
async function writtenMs(day: FileSystemDirectoryHandle): Promise<number> {
  try {
    const dates = (await filesIn(day)).map(async (file) => (await file.getFile()).lastModified);
    return Math.max(0, ...(await Promise.all(dates)));
  } catch {
    return 0;
  }
}

const NO_ANSWER: Answered = { done: false, onlyCopied: NOTHING_COPIED };

function asking(): (asked: Asked) => Promise<Answered> {
  const waiting: ((answered: Answered) => void)[] = [];
  let worker: Worker | null | undefined;
  const giveUp = (): void => {
    worker?.terminate();
    worker = null;
    for (const answer of waiting.splice(0)) answer(NO_ANSWER);
  };
  const start = (): Worker | null => {
    try {
      const made = new Worker(new URL('./copy-worker.ts', import.meta.url), { type: 'module' });
      made.addEventListener('message', ({ data }: MessageEvent<Answered>) => waiting.shift()?.(data));
      made.addEventListener('error', giveUp);
      return made;
    } catch {
      return null;
    }
  };
  return (asked) => {
    worker ??= worker === null ? null : start();
    if (!worker) return Promise.resolve(NO_ANSWER);
    worker.postMessage(asked);
    return new Promise((done) => {
      if (asked.to !== 'align') setTimeout(done, ANSWER_WITHIN_MS, NO_ANSWER);
      waiting.push(done);
    });
  };
}
