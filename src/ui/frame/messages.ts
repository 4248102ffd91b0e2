import type { Problem } from '../../shared/result.ts';
import { afterNextPaint } from '../kit/after-next-paint.ts';
import { type MessageAction, notice, raise, trouble } from '../kit/messages.ts';
import { sentenceFor } from '../words/problems.ts';

export function tell(text: string, actions: readonly MessageAction[] = []): void {
  trouble.value = null;
  // The paint that shows the result does not wait for the message.
  afterNextPaint(() => {
    notice.value = { text, at: notice.peek().at + 1, actions };
  });
}

/** Asks in place of a message; each answer ends it. */
export function ask(problem: Problem, answers: readonly MessageAction[]): void {
  const at = notice.peek().at + 1;
  const end = (): void => {
    if (notice.peek().at === at) notice.value = { text: '', at };
  };
  const actions = answers.map(({ label, onTap }) => ({
    label,
    onTap: () => {
      end();
      onTap();
    },
  }));
  notice.value = { text: sentenceFor(problem), at, actions, isQuestion: true };
}

export function complain(problem: Problem): void {
  raise(sentenceFor(problem));
}
