import { type SearchNews, type SearchRequest, searchSteps } from './search.ts';

const NEWS_EVERY_MS = 150;

const say = (news: SearchNews): void => postMessage(news);

// Off the main thread: a set takes seconds, and taps must work meanwhile.
addEventListener('message', ({ data }: MessageEvent<SearchRequest>) => {
  const steps = searchSteps(data);
  let last = performance.now();
  for (;;) {
    const step = steps.next();
    if (step.done) {
      say(step.value.ok ? { found: step.value.value } : { problem: step.value.problem });
      return;
    }
    if (performance.now() - last < NEWS_EVERY_MS) continue;
    last = performance.now();
    say({ share: step.value });
  }
});
