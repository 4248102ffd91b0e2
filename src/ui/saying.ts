import type { Problem } from '../shared/result.ts';
import { said, trouble } from './parts/messages.ts';
import { sentenceFor } from './words/problems.ts';

export function tell(text: string): void {
  said.value = { text, at: said.peek().at + 1 };
  trouble.value = null;
}

export function complain(problem: Problem): void {
  trouble.value = sentenceFor(problem);
}
