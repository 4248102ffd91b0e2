import type { DayId, Envelope } from '../facts/envelope.ts';
import { type Answered, type Asked, COPIES, dayOf, folderOf } from './copy-asked.ts';
import { linesOf, readLines } from './copy-lines.ts';

/**
 * A second copy of everything that is said, in files beside the database. Chromium has been seen to begin an empty
 * database in place of its own after it was killed in the middle of a write; the files are not touched by that. What
 * takes the whole origin away (clearing site data, a lost phone) takes both: it does not replace a copy off the phone.
 */
export interface CopyBeside {
  /** Writes facts of one action; never rejects. Resolves to false where this browser cannot. */
  keep(facts: readonly Envelope[]): Promise<boolean>;
  /** Removes every copy of a day. What cannot be removed now is never read again, and tried at the next start. */
  forget(day: DayId): Promise<void>;
  /** All that the copies hold, by day; a line that was torn is left out. */
  readAll(): Promise<ReadonlyMap<DayId, readonly Envelope[]>>;
  /** Once after a start: tries again what could not be removed, and makes copies and database say the same of every day. */
  settle(): Promise<void>;
}

/** Nothing waits longer for the copy than this: it is the second one. */
const ANSWER_WITHIN_MS = 2000;

/**
 * The copies of this phone; `window` names the file of this window among them. `onOnlyCopied` hears of facts of a day that
 * never reached the database, because a kill came between the two.
 */
export function copyBeside(
  window: string,
  onOnlyCopied: (day: DayId, facts: readonly Envelope[]) => void,
): CopyBeside {
  const ask = asking(([first, ...more]) => {
    if (first && !stillToForget().includes(first.day)) onOnlyCopied(first.day, [first, ...more]);
  });
  const forget = async (day: DayId): Promise<void> => {
    noteToForget([...stillToForget(), day]);
    if (await ask({ to: 'forget', folder: folderOf(day) }))
      noteToForget(stillToForget().filter((one) => one !== day));
  };
  return {
    async keep(facts) {
      const answers = linesOf(facts).map(([day, line]) =>
        ask({ to: 'keep', folder: folderOf(day), file: `${window}.txt`, line }),
      );
      return (await Promise.all(answers)).every(Boolean);
    },
    forget,
    async settle() {
      for (const day of stillToForget()) await forget(day);
      // One by one: an action that comes meanwhile waits for one day at most.
      for (const { name } of await folders()) await ask({ to: 'settle', folder: name });
    },
    async readAll() {
      const found = new Map<DayId, Envelope[]>();
      const erased = new Set(stillToForget().map(folderOf));
      for (const folder of await folders()) {
        if (erased.has(folder.name)) continue;
        const texts: string[] = [];
        for await (const file of folder.values())
          if (file.kind === 'file') texts.push(await (await (file as FileSystemFileHandle).getFile()).text());
        const facts = readLines(texts.join('\n'));
        if (facts.length > 0) found.set(dayOf(folder.name), facts);
      }
      return found;
    },
  };
}

/** Days that were erased while a copy of them could not be: their ids say nothing about anybody. */
const TO_FORGET = 'rollbook-erased';

const stillToForget = (): DayId[] => localStorage.getItem(TO_FORGET)?.split(' ') ?? [];

function noteToForget(days: readonly DayId[]): void {
  if (days.length === 0) localStorage.removeItem(TO_FORGET);
  else localStorage.setItem(TO_FORGET, [...new Set(days)].join(' '));
}

async function folders(): Promise<FileSystemDirectoryHandle[]> {
  const found: FileSystemDirectoryHandle[] = [];
  try {
    const root = await navigator.storage.getDirectory();
    const copies = await root.getDirectoryHandle(COPIES);
    for await (const entry of copies.values())
      if (entry.kind === 'directory') found.push(entry as FileSystemDirectoryHandle);
  } catch {
    // No such files in this browser, or nothing copied yet.
  }
  return found;
}

/** Asks the worker, which answers in the order of asking. `onFound` hears what it came upon, however late. */
function asking(onFound: (facts: readonly Envelope[]) => void): (asked: Asked) => Promise<boolean> {
  const waiting: ((done: boolean) => void)[] = [];
  let worker: Worker | null | undefined;
  const giveUp = (): void => {
    worker?.terminate();
    worker = null;
    for (const answer of waiting.splice(0)) answer(false);
  };
  const start = (): Worker | null => {
    try {
      const made = new Worker(new URL('./copy-worker.ts', import.meta.url), { type: 'module' });
      made.addEventListener('message', ({ data }: MessageEvent<Answered>) => {
        waiting.shift()?.(data.done);
        onFound(data.onlyCopied);
      });
      made.addEventListener('error', giveUp);
      return made;
    } catch {
      return null;
    }
  };
  return (asked) => {
    worker ??= worker === null ? null : start();
    if (!worker) return Promise.resolve(false);
    worker.postMessage(asked);
    return new Promise((done) => {
      setTimeout(done, ANSWER_WITHIN_MS, false);
      waiting.push(done);
    });
  };
}
