import { frameOfLabel, type Label } from '../../time/label.ts';
import { framesPerDay, type RateId } from '../../time/rate.ts';
import type { LtcFrame } from '../frames/frame.ts';
import { type Base, follows } from '../frames/successor.ts';
import { type Line, type LineFit, lineFit } from './line-fit.ts';
import { type RateHeard, rateHeard } from './rate-heard.ts';

/** The time did not go on as it was counting: by so many frames, forwards or backwards. */
export interface Jump {
  readonly from: Label;
  readonly to: Label;
  readonly byFrames: number;
}

/** What has been heard since the last jump, and how it runs. */
export interface Heard {
  readonly last: LtcFrame;
  /** Frames that the line is laid through. */
  readonly frames: number;
  readonly seconds: number;
  /** Samples from frames counted since the run began; undefined for the first frames. */
  readonly line: Line | undefined;
  /** Where the last frame begins by that line. */
  readonly lastStart: number;
  readonly rate: RateHeard | undefined;
  readonly runs: 'forwards' | 'backwards' | 'stands';
  readonly jump: Jump | undefined;
}

export interface Listening {
  add(frame: LtcFrame): void;
  heard(): Heard | undefined;
}

/** A run of frames that count on from one another; what was missed between them does not end it. */
interface Run {
  readonly fit: LineFit;
  readonly first: LtcFrame;
  readonly last: LtcFrame;
  readonly index: number;
  readonly base: Base | undefined;
  readonly skips: boolean | undefined;
}

/** A gap this long ends a run: by then a clock may have been set. */
const LONGEST_GAP_S = 5;

/** Follows the frames of one box, heard at this sample rate. */
export function listening(sampleRate: number): Listening {
  let run: Run | undefined;
  let jump: Jump | undefined;
  return {
    add(frame) {
      const next = run && goneOn(run, frame, sampleRate);
      if (run && !next && frame.step === 1) jump = jumpBetween(run, frame, sampleRate);
      run = next ?? begun(frame);
      run.fit.add(run.index, frame.start);
    },
    heard: () => run && heardOf(run, sampleRate, jump),
  };
}

const begun = (frame: LtcFrame): Run => ({
  fit: lineFit(),
  first: frame,
  last: frame,
  index: 0,
  base: undefined,
  skips: undefined,
});

const lengthOf = ({ start, end }: LtcFrame): number => end - start;

/** The run with one more frame, if the frame is one of it. */
function goneOn(run: Run, frame: LtcFrame, sampleRate: number): Run | undefined {
  const { last } = run;
  const gap = frame.start - last.start;
  if (frame.step !== last.step || frame.reversed !== last.reversed || gap > LONGEST_GAP_S * sampleRate)
    return undefined;
  const passed = Math.round(gap / lengthOf(frame));
  if (Math.abs(gap / lengthOf(frame) - passed) > 0.2) return undefined;
  const found = passed === 1 ? follows(last.label, frame.label, run.base) : undefined;
  const isNext = found
    ? found.step === frame.step
    : passed > 1 && countedOn(run, frame, sampleRate) === passed * frame.step;
  if (!isNext) return undefined;
  const { base = run.base, skipped: skips = run.skips } = found ?? {};
  return { ...run, last: frame, index: run.index + passed, base, skips };
}

/** Frames from the last label to this one at the rate that it seems to be, the shorter way round the day. */
function countedOn({ last, base }: Run, frame: LtcFrame, sampleRate: number): number {
  const fps = sampleRate / lengthOf(last);
  const counts = base ?? (fps < 24.5 ? 24 : fps < 27 ? 25 : 30);
  const rate: RateId = counts === 30 ? (frame.dropFlag ? '29.97DF' : '30') : counts === 25 ? '25' : '24';
  const frames = frameOfLabel(frame.label, rate) - frameOfLabel(last.label, rate);
  const day = framesPerDay(rate);
  return frames - day * Math.round(frames / day);
}

function jumpBetween(run: Run, frame: LtcFrame, sampleRate: number): Jump {
  const passed = Math.round((frame.start - run.last.start) / lengthOf(frame));
  return { from: run.last.label, to: frame.label, byFrames: countedOn(run, frame, sampleRate) - passed };
}

function heardOf({ fit, last, index, base, skips }: Run, sampleRate: number, jump: Jump | undefined): Heard {
  const line = fit.line();
  return {
    last,
    frames: fit.count(),
    seconds: (index * lengthOf(last)) / sampleRate,
    line,
    lastStart: line?.at(index) ?? last.start,
    rate:
      line && last.step === 1
        ? rateHeard(line, sampleRate, { base, skips, dropFlag: last.dropFlag })
        : undefined,
    runs: last.step === 1 ? 'forwards' : last.step === 0 ? 'stands' : 'backwards',
    jump,
  };
}
