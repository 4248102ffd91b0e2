import type { LogPlace, OpenLog } from './log.ts';
import { runSession, type SessionParts } from './session.ts';

export interface LiveParts extends SessionParts {
  readonly openLog: OpenLog;
  readonly place: LogPlace;
}

/** A day that is kept in step with a server, whenever there is one. */
export interface LiveDay {
  /** Tries at once, as when the network came back. */
  retry(): void;
  close(): Promise<void>;
}

const FIRST_PAUSE_MS = 500;
const LAST_PAUSE_MS = 10_000;

export function keepLive({ openLog, place, ...session }: LiveParts): LiveDay {
  const { sealer, tell } = session;
  let isClosed = false;
  let pause = FIRST_PAUSE_MS;
  let wake: () => void = () => {};
  let hangUp: () => void = () => {};

  const rest = (): Promise<void> =>
    new Promise((done) => {
      const timer = setTimeout(done, pause);
      wake = () => {
        clearTimeout(timer);
        done();
      };
      pause = Math.min(pause * 2, LAST_PAUSE_MS);
    });

  const connectOnce = async (): Promise<void> => {
    const log = await openLog(place, sealer.day);
    if (isClosed) {
      if (log.ok) log.value.close();
      return;
    }
    if (!log.ok) return tell({ is: 'alone', problem: log.problem });
    hangUp = log.value.close;
    const problem = await runSession(log.value, {
      ...session,
      tell(state) {
        if (state.is === 'live') pause = FIRST_PAUSE_MS;
        tell(state);
      },
    });
    tell({ is: 'alone', problem });
  };

  tell({ is: 'alone', problem: null });
  const over = (async () => {
    while (!isClosed) {
      await connectOnce();
      if (!isClosed) await rest();
    }
  })();

  return {
    retry: () => wake(),
    async close() {
      isClosed = true;
      hangUp();
      wake();
      await over;
    },
  };
}
