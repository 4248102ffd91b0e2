import type { OpenPlanPort } from '../../app/planner.ts';
import { workThrough } from '../../app/work-through.ts';
import type { PlanAsked, PlanNews } from '../../plan/setup/plan-news.ts';

export interface PlanQuestion {
  readonly number: number;
  readonly asked: PlanAsked;
}

export interface PlanReply {
  readonly number: number;
  readonly news: PlanNews;
}

/** A worker, which sees the next question between two slices of the last one. */
export const workerPort: OpenPlanPort = ({ hear, failed }) => {
  const worker = new Worker(new URL('./plan-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<PlanReply>) => hear(data.number, data.news));
  worker.addEventListener('error', failed);
  return {
    ask: (number, asked) => worker.postMessage({ number, asked } satisfies PlanQuestion),
    close: () => worker.terminate(),
  };
};

/** Half a frame, so that taps work between slices. */
const SLICE_MS = 8;

/** Fallback on the page's own thread where no worker can start; loads the search only then. */
export const pagePort: OpenPlanPort = ({ hear, failed }) => {
  const loading = import('../../plan/setup/plan-news.ts');
  let asking = 0;
  let stop = (): void => {};
  return {
    ask(number, asked) {
      stop();
      asking = number;
      const begin = ({ planNews }: Awaited<typeof loading>): void => {
        if (number !== asking) return;
        stop = workThrough(planNews(asked), SLICE_MS, (news) => hear(number, news), failed);
      };
      loading.then(begin, failed);
    },
    close() {
      asking = 0;
      stop();
    },
  };
};
