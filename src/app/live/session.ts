import type { Problem } from '../../shared/result.ts';
import type { BatchBook } from './book.ts';
import type { DayFacts } from './day-facts.ts';
import { Giving } from './giving.ts';
import { Incoming } from './incoming.ts';
import type { LiveState } from './live-state.ts';
import type { LogConnection, LogMessage } from './log.ts';
import type { Sealer } from './sealer.ts';

export interface SessionParts {
  readonly sealer: Sealer;
  readonly book: BatchBook;
  readonly facts: DayFacts;
  readonly tell: (state: LiveState) => void;
  /** Told once that another phone writes under this phone's key, from the batch of this number on. */
  readonly onKeyTwice: (from: number) => void;
}

/** As many at once as fold in a moment. */
const TAKEN_AT_ONCE = 500;
/** A handful that arrive together is no catching up. */
const A_HANDFUL = 10;

/**
 * One connection, from the first message to its end: reads what the server has, gives it what it lacks, then stays.
 * Resolves with what ended it.
 */
export async function runSession(log: LogConnection, parts: SessionParts): Promise<Problem> {
  const { sealer, book, facts, tell, onKeyTwice } = parts;
  const incoming = new Incoming(sealer, book, facts);
  const giving = new Giving(log, parts);
  const inbox: LogMessage[] = [];
  const left = new Map<string, number>();
  let isCaughtUp = false;
  let isKeyTwiceTold = false;
  let isOver = false;
  let fault: Problem | undefined;

  const toRead = (): number => [...left.values()].reduce((sum, count) => sum + count, 0) + inbox.length;
  const isKeyTwice = (): boolean => incoming.keyTwiceFrom !== null;
  const say = (): void => {
    if (isOver) return;
    if (toRead() > (isCaughtUp ? A_HANDFUL : 0) || !isCaughtUp) tell({ is: 'catching-up', left: toRead() });
    else {
      const problem: Problem | null = isKeyTwice() ? { code: 'live-key-twice' } : giving.problem;
      tell({ is: 'live', problem, owes: giving.owes });
    }
  };

  const mayGive = (): boolean => toRead() === 0 && giving.isWanted && !isKeyTwice();
  const step = async (): Promise<boolean> => {
    if (inbox.length > 0) {
      await incoming.take(inbox.splice(0, TAKEN_AT_ONCE));
      giving.isWanted = true;
      if (incoming.keyTwiceFrom !== null && !isKeyTwiceTold) onKeyTwice(incoming.keyTwiceFrom);
      isKeyTwiceTold = isKeyTwice();
    } else if (mayGive()) {
      isCaughtUp = true;
      fault = await giving.giveAll();
    } else return false;
    isCaughtUp ||= toRead() === 0;
    say();
    return !isOver && !fault;
  };
  let working: Promise<void> | undefined;
  const work = (): void => {
    working ??= (async () => {
      while (await step());
    })()
      // What the disk refuses is tried again with the next connection.
      .catch(() => {
        fault = { code: 'live-slow' };
      })
      .finally(() => {
        working = undefined;
        if (fault) log.close();
        // What came after the last step and before this was told that somebody works already.
        else if (!isOver && (inbox.length > 0 || mayGive())) work();
      });
  };
  const stopHearing = facts.listen(() => {
    giving.isWanted = true;
    say();
    work();
  });

  for (const stream of log.streams) {
    // It lost messages that it had acknowledged: a disk that was put back, a machine without power.
    if (stream.last < book.upTo(stream.id)) book.startAgain(stream.id);
    const reading = await log.read(stream, book.upTo(stream.id), (message) => {
      inbox.push(message);
      left.set(message.stream, message.left);
      work();
    });
    if (!reading.ok) {
      fault = reading.problem;
      log.close();
      break;
    }
    if (!left.has(stream.id)) left.set(stream.id, reading.value);
  }
  giving.again = work;
  say();
  work();
  const ended = await log.ended;
  isOver = true;
  stopHearing();
  giving.stop();
  await working;
  return fault ?? ended;
}
