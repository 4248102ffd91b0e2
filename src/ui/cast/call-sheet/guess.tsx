import type { ComponentChildren } from 'preact';
import type { How } from '../../../app/commands/call-sheet.ts';

interface GuessProps {
  readonly how: How | undefined;
  readonly children: ComponentChildren;
}

/** A cell of a call sheet; what was guessed has a mark, and says so. */
export function Guess({ how, children }: GuessProps) {
  if (how !== 'guessed') return <span>{children}</span>;
  return (
    <span class="guess">
      {children}
      <span aria-hidden="true">?</span>
      <span class="unseen"> (guessed)</span>
    </span>
  );
}
