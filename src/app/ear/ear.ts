import { type Heard, listening } from '../../ltc/measure/listening.ts';
import type { HearingCode, HearingProblem } from '../../shared/hearing-problem.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { audioClock } from './audio-clock.ts';
import { EAR_PROCESSOR, type EarNews } from './ear-news.ts';
import workletUrl from './ear-worklet.ts?worker&url';

/** What the phone hears now. */
export interface EarState {
  /** Decibels against full scale of the loudest sample of the last tenth of a second. */
  readonly peakDb: number;
  readonly good: number;
  readonly bad: number;
  readonly heard: Heard | undefined;
  /** Whether a frame was read within the last half second. */
  readonly isReading: boolean;
}

/** An open microphone. What it hears is read on the audio thread and never kept. */
export interface Ear {
  readonly sampleRate: number;
  /** Forgets what was heard, for the next box; the audio clock goes on. */
  listenAnew(): void;
  /** The moment of the page's counter at which a sample was heard, late by the delay of the microphone's path. */
  msAt(sample: number): number | undefined;
  readonly doubtMs: () => number;
  close(): void;
}

export interface EarEvents {
  readonly onState: (state: EarState) => void;
  /** It has ended by itself: the microphone was unplugged, or the page is hidden. */
  readonly onEnd: (problem: HearingProblem) => void;
}

/** Errors of `getUserMedia`, by their names in the Media Capture standard. */
const REFUSALS: Readonly<Record<string, HearingCode & `microphone-${string}`>> = {
  NotAllowedError: 'microphone-refused',
  SecurityError: 'microphone-refused',
  NotFoundError: 'microphone-missing',
  OverconstrainedError: 'microphone-missing',
  NotReadableError: 'microphone-busy',
  AbortError: 'microphone-busy',
};

/** A phone's voice processing would take the code for noise. */
const PLAIN_SOUND = {
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: { ideal: 1 },
} as const;

const READING_S = 0.5;

/** Opens the microphone and listens; call it in the handler of a tap, or the browser may refuse. */
export async function openEar(events: EarEvents): Promise<Result<Ear, HearingProblem>> {
  // Missing without a secure origin, and in old browsers.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices?.getUserMedia || typeof AudioWorkletNode === 'undefined')
    return fail({ code: 'microphone-not-here' });
  const context = new AudioContext({ latencyHint: 'interactive' });
  let stream: MediaStream | undefined;
  try {
    // Both at once: the context may start only in the tap that asks for the microphone.
    const resumed = context.resume();
    stream = await devices.getUserMedia({ audio: PLAIN_SOUND });
    await context.audioWorklet.addModule(workletUrl);
    await resumed;
    return ok(listen(context, stream, events));
  } catch (error) {
    stop(context, stream);
    const name = error instanceof Error ? error.name : 'Error';
    return fail({ code: (!stream && REFUSALS[name]) || 'listening-failed', name });
  }
}

function stop(context: AudioContext, stream: MediaStream | undefined): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
  if (context.state !== 'closed') context.close().catch(() => {});
}

function listen(context: AudioContext, stream: MediaStream, { onState, onEnd }: EarEvents): Ear {
  const { sampleRate } = context;
  const clock = audioClock(sampleRate);
  let heard = listening(sampleRate);
  let from = 0;
  let counted = { good: 0, bad: 0 };
  let last = counted;
  let at = 0;

  // Without an output: nothing that is heard may be played, and what is not joined to anything cannot be.
  const node = new AudioWorkletNode(context, EAR_PROCESSOR, {
    numberOfOutputs: 0,
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  context.createMediaStreamSource(stream).connect(node);

  const close = (): void => {
    document.removeEventListener('visibilitychange', hidden);
    node.port.onmessage = null;
    stop(context, stream);
  };
  const end = (problem: HearingProblem): void => {
    close();
    onEnd(problem);
  };
  const hidden = (): void => {
    if (document.hidden) end({ code: 'listening-stopped' });
  };
  document.addEventListener('visibilitychange', hidden);
  for (const track of stream.getTracks())
    track.addEventListener('ended', () => end({ code: 'microphone-lost' }));

  node.port.onmessage = ({ data }: MessageEvent<EarNews>) => {
    at = data.at;
    clock.told(at, performance.now());
    for (const frame of data.frames) if (frame.start >= from) heard.add(frame);
    last = { good: data.good, bad: data.bad };
    const now = heard.heard();
    onState({
      peakDb: 20 * Math.log10(data.peak),
      good: last.good - counted.good,
      bad: last.bad - counted.bad,
      heard: now,
      isReading: now !== undefined && at - now.last.end < READING_S * sampleRate,
    });
  };

  return {
    sampleRate,
    listenAnew() {
      heard = listening(sampleRate);
      from = at;
      counted = last;
    },
    msAt: clock.msAt,
    doubtMs: clock.doubtMs,
    close,
  };
}
