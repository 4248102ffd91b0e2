import type { Ear } from '../../app/ear/ear.ts';
import { type BoxHeard, type Offset, offsetBetween } from '../../ltc/measure/compare.ts';
import type { Tie } from '../../ltc/measure/tie.ts';
import type { HearingProblem } from '../../shared/hearing-problem.ts';
import type { Result } from '../../shared/result.ts';

/** A box as it was heard, and through which opening of the microphone. */
export interface HeardBox {
  readonly box: BoxHeard;
  readonly session: Session;
}

/** One opening of the microphone: as long as it lasts, the clock of the sound card is the only clock asked. */
export interface Session {
  readonly ear: Ear;
  /** Its first sample, by the page's counter, as it was seen at first. */
  readonly originMs: number;
  /** How far that may be wrong; it matters only between two sessions. */
  readonly originDoubtMs: number;
}

export function sessionOf(ear: Ear): Session | undefined {
  const originMs = ear.msAt(0);
  return originMs === undefined ? undefined : { ear, originMs, originDoubtMs: ear.doubtMs() };
}

/** Less is beyond a microphone. */
const LEAST_DOUBT_MS = 0.05;

/**
 * The box at its last frame. Where the sound card has slipped against the page's counter since the session began, as
 * when sound was lost on the way, the doubt is as large as the slip.
 */
export function boxHeard({ frames, rate, start, spread, heard }: Tie, session: Session): HeardBox {
  const { ear, originMs } = session;
  const msASample = 1000 / ear.sampleRate;
  const slipMs = Math.max(
    0,
    Math.abs((ear.msAt(0) ?? originMs) - originMs) - ear.doubtMs() - session.originDoubtMs,
  );
  const doubtMs = LEAST_DOUBT_MS + (2 * spread * msASample) / Math.sqrt(heard) + slipMs;
  return { box: { frames, rate, atMs: originMs + start * msASample, doubtMs }, session };
}

/** How far the second box is ahead of the first. */
export function boxesApart(one: HeardBox, other: HeardBox): Result<Offset, HearingProblem> {
  if (one.session === other.session) return offsetBetween(one.box, other.box);
  const [first, second] = [one, other].map(({ box, session }) => ({
    ...box,
    doubtMs: box.doubtMs + session.originDoubtMs,
  }));
  return offsetBetween(first!, second!);
}

/** Two boxes that were heard, and how far the second is ahead of the first. */
export interface HeardPair {
  readonly ids: readonly [string, string];
  readonly apart: Result<Offset, HearingProblem>;
}

/** Every pair of the boxes that were heard, in the order of `ids`. */
export function heardPairs(ids: readonly string[], heard: ReadonlyMap<string, HeardBox>): HeardPair[] {
  const boxes = ids.flatMap((id) => {
    const box = heard.get(id);
    return box ? [{ id, box }] : [];
  });
  return boxes.flatMap((one, at) =>
    boxes
      .slice(at + 1)
      .map((other) => ({ ids: [one.id, other.id] as const, apart: boxesApart(one.box, other.box) })),
  );
}
