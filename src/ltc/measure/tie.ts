import type { HearingProblem } from '../../shared/hearing-problem.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { frameOfLabel } from '../../time/label.ts';
import type { RateId } from '../../time/rate.ts';
import type { Heard } from './listening.ts';

/** A frame, where it began, and how well that is known. */
export interface Tie {
  /** Since 00:00:00:00. */
  readonly frames: number;
  readonly rate: RateId;
  /** The sample at which that frame began, with a fraction. */
  readonly start: number;
  /** How many frames the line is laid through, and how far they stray from it. */
  readonly heard: number;
  readonly spread: number;
}

/** Less than this is no fit. */
export const TIE_SECONDS = 2;

/** The last frame heard as the point to tie a clock to, or to compare a box by. */
export function tieTo(heard: Heard): Result<Tie, HearingProblem> {
  const { rate, line, last, lastStart, runs } = heard;
  if (runs === 'backwards') return fail({ code: 'heard-backwards' });
  if (runs === 'stands') return fail({ code: 'heard-standing' });
  if (!line || !rate || heard.seconds < TIE_SECONDS) return fail({ code: 'heard-too-short' });
  if (!rate.rate) return fail({ code: 'heard-rate-unclear' });
  const frames = frameOfLabel(last.label, rate.rate);
  return ok({ frames, rate: rate.rate, start: lastStart, heard: heard.frames, spread: line.spread });
}
