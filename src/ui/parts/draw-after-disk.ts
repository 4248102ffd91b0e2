import { options } from 'preact';
import type { DayStore } from '../../app/day-store.ts';

/** Longer than this no picture waits for the disk: a quarter of a frame at 60 Hz. */
const PATIENCE_MS = 4;

/**
 * A disk that answers at once is heard before the page is drawn and not after it, so that a tap is saved as soon as it
 * can be, and drawn once with its word. Where nothing is being saved, nothing waits. Returns what ends this.
 */
export function drawAfterDisk({ saving, settled }: Pick<DayStore, 'saving' | 'settled'>): () => void {
  const before = options.debounceRendering ?? queueMicrotask;
  // A tap first changes the day and then has it saved, so one looks when the tap is through.
  options.debounceRendering = (draw) =>
    queueMicrotask(() => {
      if (saving.peek().state !== 'saving') return draw();
      const patience = new Promise((done) => setTimeout(done, PATIENCE_MS));
      void Promise.race([settled(), patience]).then(draw);
    });
  return () => {
    options.debounceRendering = before;
  };
}
