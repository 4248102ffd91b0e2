import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { wavBytes } from '../ltc/wav-bytes.ts';

/** A file for the browser's microphone, and how to take it away again. */
export function recordingToHear(
  samples: Float32Array,
  sampleRate = 48_000,
): { path: string; remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-hear-'));
  const path = join(folder, 'timecode.wav');
  writeFileSync(path, wavBytes(samples, sampleRate));
  return { path, remove: () => rmSync(folder, { recursive: true }) };
}

export interface Overheard {
  readonly samples: number[];
  readonly sampleRate: number;
  /** When the last of them had come. */
  readonly dateMs: number;
}

declare global {
  var heardLately: (() => Promise<Overheard[]>) | undefined;
}

/**
 * Runs in the page: what the microphone gives is also kept for a moment by an analyser of the test's own, so that the
 * truth does not come from the app. It is asked again and again: on a loaded machine sound comes late, but never early.
 */
export function overhear(): void {
  const { mediaDevices } = navigator;
  const open = mediaDevices.getUserMedia.bind(mediaDevices);
  mediaDevices.getUserMedia = async (wanted) => {
    const stream = await open(wanted);
    const context = new AudioContext();
    const analyser = new AnalyserNode(context, { fftSize: 8192 });
    context.createMediaStreamSource(stream).connect(analyser);
    const latest = new Float32Array(analyser.fftSize);
    globalThis.heardLately = async () => {
      const all: Overheard[] = [];
      while (all.length < 24) {
        await new Promise((done) => setTimeout(done, 37));
        analyser.getFloatTimeDomainData(latest);
        all.push({ samples: [...latest], sampleRate: context.sampleRate, dateMs: Date.now() });
      }
      return all;
    };
    return stream;
  };
}
