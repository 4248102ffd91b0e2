import { signal } from '@preact/signals';

/** What can be done about a message, in the message. */
export interface MessageAction {
  readonly label: string;
  readonly onTap: () => void;
  /** Whether it can still be done; read while the message is drawn, so signals in it keep it right. */
  readonly isOffered?: () => boolean;
}

export interface Notice {
  readonly text: string;
  /** Counts the notices, so that a sheet can tell those that were there before it. */
  readonly at: number;
  readonly actions?: readonly MessageAction[];
  /** A question: it stays until it is answered, or something else is said. */
  readonly isQuestion?: boolean;
}

/** Announced politely and shown for a while: what was done. */
export const notice = signal<Notice>({ text: '', at: 0 });

/** Ends a message that offers something: what it is about is no longer on the screen. */
export function endOffers(): void {
  const { at, actions = [] } = notice.peek();
  if (actions.length > 0) notice.value = { text: '', at };
}

/** Announced assertively and shown until dismissed: what could not be done, or data at risk. */
export const trouble = signal<{ readonly text: string; readonly at: number } | null>(null);

let raised = 0;

export function raise(text: string): void {
  raised += 1;
  trouble.value = { text, at: raised };
}

/** The newest trouble so far, dismissed ones too: a sheet shows only what was raised after it opened. */
export const newestTrouble = (): number => raised;

/** How many sheets cover the page: the topmost one shows messages. */
export const sheetsOpen = signal(0);

/** How many screens have a place for messages of their own. */
export const messagePlaces = signal(0);
