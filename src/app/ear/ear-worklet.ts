import { ltcDecoder } from '../../ltc/decoder.ts';
import type { LtcFrame } from '../../ltc/frames/frame.ts';
import { EAR_PROCESSOR, type EarNews } from './ear-news.ts';

// The scope of an audio worklet, which the types of a page do not know.
declare const sampleRate: number;
declare const currentFrame: number;
declare function registerProcessor(name: string, processor: typeof Processor): void;
declare class Processor {
  readonly port: MessagePort;
  process(inputs: readonly (readonly Float32Array[])[]): boolean;
}
declare const AudioWorkletProcessor: typeof Processor;

/** Blocks in a tenth of a second. */
const NEWS_EVERY = Math.round(sampleRate / 128 / 10);

/** Reads timecode on the audio thread, so that no sound has to leave it. */
class Ear extends AudioWorkletProcessor {
  readonly #decoder = ltcDecoder(sampleRate);
  #frames: LtcFrame[] = [];
  #first: number | undefined;
  #at = 0;
  #peak = 0;
  #blocks = 0;

  override process([input]: readonly (readonly Float32Array[])[]): boolean {
    const samples = input?.[0];
    if (!samples) return true;
    this.#first ??= currentFrame;
    // A pause of the input is no jump of the time: positions go on by the clock of the sound card.
    const missed = currentFrame - this.#first - this.#at;
    if (missed > 0) this.#push(new Float32Array(missed));
    this.#push(samples);
    for (const sample of samples) this.#peak = Math.max(this.#peak, Math.abs(sample));
    this.#blocks += 1;
    if (this.#blocks % NEWS_EVERY === 0) this.#tell();
    return true;
  }

  #push(samples: Float32Array): void {
    for (const frame of this.#decoder.push(samples)) this.#frames.push(frame);
    this.#at += samples.length;
  }

  #tell(): void {
    const news: EarNews = { at: this.#at, frames: this.#frames, peak: this.#peak, ...this.#decoder.counts() };
    this.port.postMessage(news);
    this.#frames = [];
    this.#peak = 0;
  }
}

registerProcessor(EAR_PROCESSOR, Ear);
