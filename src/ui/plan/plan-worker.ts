import { workThrough } from '../../app/work-through.ts';
import { planNews } from '../../plan/setup/plan-news.ts';
import type { PlanQuestion, PlanReply } from './plan-ports.ts';

/** The longest a new question waits for the previous one to be dropped. */
const SLICE_MS = 20;

let stop = (): void => {};

addEventListener('message', ({ data: { number, asked } }: MessageEvent<PlanQuestion>) => {
  stop();
  const say = (news: PlanReply['news']): void => postMessage({ number, news } satisfies PlanReply);
  stop = workThrough(planNews(asked), SLICE_MS, say, reportError);
});
