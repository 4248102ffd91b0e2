/** Samples as a mono wave file of 16 bit with the plain 44-byte header. */
export function wavBytes(samples: Float32Array, sampleRate: number): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(44 + 2 * samples.length));
  const text = (at: number, word: string): void => {
    for (let i = 0; i < word.length; i += 1) bytes.setUint8(at + i, word.charCodeAt(i));
  };
  text(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * samples.length, true);
  text(8, 'WAVEfmt ');
  bytes.setUint32(16, 16, true);
  bytes.setUint16(20, 1, true);
  bytes.setUint16(22, 1, true);
  bytes.setUint32(24, sampleRate, true);
  bytes.setUint32(28, 2 * sampleRate, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  text(36, 'data');
  bytes.setUint32(40, 2 * samples.length, true);
  for (const [i, value] of samples.entries())
    bytes.setInt16(44 + 2 * i, Math.round(Math.max(-1, Math.min(1, value)) * 32_767), true);
  return new Uint8Array(bytes.buffer);
}
