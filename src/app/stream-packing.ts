import type { Packing } from '../exchange/parcel.ts';

/** By the platform's streams (WHATWG Compression; RFC 1951). */
export const streamPacking: Packing = {
  async pack(text) {
    const packed = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
    return new Uint8Array(await new Response(packed).arrayBuffer());
  },
  async unpack(bytes, most) {
    const unpacked = new Blob([new Uint8Array(bytes)])
      .stream()
      .pipeThrough(new DecompressionStream('deflate-raw'));
    const parts: BlobPart[] = [];
    let length = 0;
    try {
      const reader = unpacked.getReader();
      for (let part = await reader.read(); !part.done; part = await reader.read()) {
        length += part.value.length;
        if (length > most) {
          await reader.cancel();
          return null;
        }
        parts.push(part.value);
      }
    } catch {
      return null;
    }
    return new Blob(parts).text();
  },
};
