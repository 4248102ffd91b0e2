import type { Problem } from '../../shared/result.ts';
import { afterNextPaint } from '../kit/after-next-paint.ts';
import { notice, trouble } from '../kit/messages.ts';
import { sentenceFor } from '../words/problems.ts';

export function tell(text: string): void {
  trouble.value = null;
  // The paint that shows the result does not wait for the message.
  afterNextPaint(() => {
    notice.value = { text, at: notice.peek().at + 1 };
  });
}

export function complain(problem: Problem): void {
  trouble.value = sentenceFor(problem);
}
