import { deflateRawSync, inflateRawSync } from 'node:zlib';
import type { Packing } from '../../src/exchange/parcel.ts';

/** What the browser's stream does, by Node. */
export const nodePacking: Packing = {
  pack: async (text) => new Uint8Array(deflateRawSync(text)),
  async unpack(bytes, most) {
    try {
      return inflateRawSync(bytes, { maxOutputLength: most }).toString('utf8');
    } catch {
      return null;
    }
  },
};
