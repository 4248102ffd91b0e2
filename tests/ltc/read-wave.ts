import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

export interface Sound {
  readonly sampleRate: number;
  readonly samples: Float32Array;
}

/** A mono recording of 8 or 16 bit from `recordings/`, each made with a plain 44-byte header. */
export function readRecording(name: string): Sound {
  const bytes = readFileSync(resolve(import.meta.dirname, 'recordings', `${name}.wav`));
  const data = bytes.indexOf('data', 12, 'latin1');
  const sampleRate = bytes.readUInt32LE(24);
  const depth = bytes.readUInt16LE(34);
  const body = bytes.subarray(data + 8, data + 8 + bytes.readUInt32LE(data + 4));
  const samples =
    depth === 8
      ? Float32Array.from(body, (value) => (value - 128) / 128)
      : Float32Array.from({ length: body.length / 2 }, (_, i) => body.readInt16LE(2 * i) / 32_768);
  return { sampleRate, samples };
}
