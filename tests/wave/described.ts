import { expect } from 'vitest';
import { describeWave, type WaveDescription } from '../../src/wave/file/describe-wave.ts';
import type { ByteSource } from '../../src/wave/riff/header-reader.ts';
import { type BuiltChunk, buildWave, data, fmt, ixml, type WaveWanted } from './build-wave.ts';

/** The description, failing the test where there is none. */
export async function described(source: ByteSource): Promise<WaveDescription> {
  const result = await describeWave(source);
  expect(result).toMatchObject({ ok: true });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

export const describedChunks = (
  chunks: readonly BuiltChunk[],
  wanted?: WaveWanted,
): Promise<WaveDescription> => described(buildWave(chunks, wanted));

/** A mono file with this inside its iXML root. */
export const describedIXml = (inside: string): Promise<WaveDescription> =>
  describedChunks([fmt(), data(), ixml(inside)]);

export const codesOf = ({ warnings }: WaveDescription): string[] => warnings.map(({ code }) => code);
