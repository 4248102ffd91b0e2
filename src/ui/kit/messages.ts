import { signal } from '@preact/signals';

/** What the polite live region says, and shows for a moment: what was done. */
export const notice = signal<{ readonly text: string; readonly at: number }>({ text: '', at: 0 });
/** What the assertive region says: what could not be done, or data at risk. */
export const trouble = signal<string | null>(null);

/** How many sheets cover the page: while one does, it shows what could not be done. */
export const sheetsOpen = signal(0);
