import { signal } from '@preact/signals';

/** Announced politely and shown for a moment: what was done. */
export const notice = signal<{ readonly text: string; readonly at: number }>({ text: '', at: 0 });
/** Announced assertively: what could not be done, or data at risk. */
export const trouble = signal<string | null>(null);

/** How many sheets cover the page: the topmost one shows what could not be done. */
export const sheetsOpen = signal(0);
