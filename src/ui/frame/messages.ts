import type { Problem } from '../../shared/result.ts';
import { afterNextPaint } from '../kit/after-next-paint.ts';
import { type MessageAction, notice, raise, trouble } from '../kit/messages.ts';

export function tell(text: string, actions: readonly MessageAction[] = []): void {
  trouble.value = null;
  // The paint that shows the result does not wait for the message.
  afterNextPaint(() => {
    notice.value = { text, at: notice.peek().at + 1, actions };
  });
}

/**
 * A problem in a sentence. The sentences come after the first load, which has no room for so many; where they are
 * missing, only that it was not done.
 */
async function inWords(problem: Problem): Promise<string> {
  const words = await import('../words/problems.ts').catch(() => undefined);
  return words ? words.sentenceFor(problem) : 'That could not be done.';
}

/** Asks in place of a message; each answer ends it. */
export function ask(problem: Problem, answers: readonly MessageAction[]): void {
  void inWords(problem).then((text) => askInWords(text, answers));
}

function askInWords(text: string, answers: readonly MessageAction[]): void {
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
  notice.value = { text, at, actions, isQuestion: true };
}

export function complain(problem: Problem): void {
  void inWords(problem).then(raise);
}
