import { hexOf, type Token, viewOf } from '../riff/byte-view.ts';
import type { Warn } from '../warning.ts';

export interface WaveFormat {
  /** Byte position of the chunk. */
  readonly at: number;
  /** The sample type, looking through an extensible header: 1 PCM, 3 float, others as registered. */
  readonly tag: number;
  readonly float: boolean;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bytesPerSecond: number;
  /** Bytes of one sample frame, all channels together. */
  readonly blockAlign: number;
  /** Bits a sample takes up, and how many of them are used. */
  readonly containerBits: number;
  readonly validBits: number;
}

const PCM = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
const SHORTEST = 16;

/** Most bytes of a fmt payload worth reading. */
export const FMT_MOST_BYTES = 40;

// RIFF/WAVE data specification 1994, WAVEFORMAT with wBitsPerSample.
const PLAIN = {
  len: SHORTEST,
  get: (view: DataView, at: number) => ({
    tag: view.getUint16(at, true),
    channels: view.getUint16(at + 2, true),
    sampleRate: view.getUint32(at + 4, true),
    bytesPerSecond: view.getUint32(at + 8, true),
    blockAlign: view.getUint16(at + 12, true),
    bits: view.getUint16(at + 14, true),
  }),
} satisfies Token<unknown>;

// WAVEFORMATEXTENSIBLE: cbSize 22, valid bits, channel mask, sub-format whose first two bytes are the plain tag.
const EXTENSION = {
  len: 24,
  get: (view: DataView, at: number) => ({
    validBits: view.getUint16(at + 2, true),
    tag: view.getUint16(at + 8, true),
    guidTail: hexOf(new Uint8Array(view.buffer, view.byteOffset + at + 10, 14)),
  }),
} satisfies Token<unknown>;

/** What follows the tag in every sub-format that stands for a plain one. */
const GUID_TAIL = '000000001000800000aa00389b71';

/**
 * Reads a fmt payload (16, 18 or 40 bytes); undefined if it yields no format. A block align that does not fit
 * channels and bits is recomputed and reported.
 */
export function readFmt(payload: Uint8Array, at: number, warn: Warn): WaveFormat | undefined {
  if (payload.byteLength < PLAIN.len) {
    warn({ code: 'fmt-short', at, size: payload.byteLength });
    return undefined;
  }
  const view = viewOf(payload);
  const plain = PLAIN.get(view, 0);
  if (plain.channels === 0 || plain.sampleRate === 0) {
    warn({ code: 'fmt-damaged', at, channels: plain.channels, sampleRate: plain.sampleRate });
    return undefined;
  }
  const extension = plain.tag === EXTENSIBLE ? readExtension(view, at, warn) : undefined;
  const tag = extension?.tag ?? (plain.tag === EXTENSIBLE ? PCM : plain.tag);
  const { containerBits, blockAlign } = frameLayout(plain, tag);
  const bytesPerSecond = blockAlign * plain.sampleRate;
  if (blockAlign !== plain.blockAlign || (isLinear(tag) && bytesPerSecond !== plain.bytesPerSecond))
    warn({
      code: 'fmt-inconsistent',
      at,
      blockAlign: plain.blockAlign,
      bytesPerSecond: plain.bytesPerSecond,
    });
  const claimed = extension?.validBits || plain.bits;
  return {
    at,
    tag,
    float: tag === FLOAT,
    channels: plain.channels,
    sampleRate: plain.sampleRate,
    bytesPerSecond: isLinear(tag) ? bytesPerSecond : plain.bytesPerSecond,
    blockAlign,
    containerBits,
    validBits: Math.min(claimed, containerBits) || containerBits,
  };
}

const isLinear = (tag: number): boolean => tag === PCM || tag === FLOAT;

/** Twenty bits sit in a container of 24: block align says so, and the bits field alone does not. */
function frameLayout(
  plain: { channels: number; blockAlign: number; bits: number },
  tag: number,
): { containerBits: number; blockAlign: number } {
  const { channels, blockAlign, bits } = plain;
  const given = blockAlign / channels;
  if (!isLinear(tag) && blockAlign > 0) return { containerBits: bits, blockAlign };
  if (Number.isInteger(given) && given >= 1 && given <= 8 && given * 8 >= bits && given * 8 - bits < 16)
    return { containerBits: given * 8, blockAlign };
  const bytes = Math.min(8, Math.max(1, Math.ceil(bits / 8)));
  return { containerBits: bytes * 8, blockAlign: channels * bytes };
}

function readExtension(view: DataView, at: number, warn: Warn): ReturnType<typeof EXTENSION.get> | undefined {
  if (view.byteLength < PLAIN.len + EXTENSION.len) {
    warn({ code: 'fmt-short', at, size: view.byteLength });
    return undefined;
  }
  const extension = EXTENSION.get(view, PLAIN.len);
  if (extension.guidTail !== GUID_TAIL) warn({ code: 'fmt-inconsistent', at, subFormat: extension.guidTail });
  return extension;
}
