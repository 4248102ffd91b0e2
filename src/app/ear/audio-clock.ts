/** Which moment of the page's counter a sample was heard at. */
export interface AudioClock {
  /** So many samples had been heard when this was told at `nowMs` of the page's counter. */
  told(samples: number, nowMs: number): void;
  /** Undefined until something was told. */
  msAt(sample: number): number | undefined;
  /** How far that may be wrong, but for the delay between the microphone and here, which nobody can see. */
  readonly doubtMs: () => number;
}

/** Enough news to have a few that did not wait, and few enough to follow a sound card that runs fast or slow. */
const KEPT = 64;
/** News are never early, and now and then late by what else the page does. The fifth earliest says how unevenly. */
const FIFTH = 4;

/** The earliest of the latest news count: each is late by a little, and none is early. */
export function audioClock(sampleRate: number): AudioClock {
  const offsets: number[] = [];
  let at = 0;
  const sorted = (): number[] => offsets.toSorted((a, b) => a - b);
  return {
    told(samples, nowMs) {
      offsets[at % KEPT] = nowMs - (samples / sampleRate) * 1000;
      at += 1;
    },
    msAt(sample) {
      const [earliest] = sorted();
      return earliest === undefined ? undefined : earliest + (sample / sampleRate) * 1000;
    },
    doubtMs() {
      const all = sorted();
      return (all[Math.min(FIFTH, all.length - 1)] ?? 0) - (all[0] ?? 0);
    },
  };
}
