import type { SealingParts } from '../../exchange/sealed/seal.ts';
import { platformCrypto } from '../../exchange/sealed/sealing-crypto.ts';
import { streamPacking } from '../stream-packing.ts';

/** What the page has to seal with. */
export const platformParts: SealingParts = { crypto: platformCrypto(crypto), packing: streamPacking };
