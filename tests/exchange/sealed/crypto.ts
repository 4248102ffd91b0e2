import { platformCrypto, type SealingCrypto } from '../../../src/exchange/sealed/sealing-crypto.ts';

export const nodeCrypto: SealingCrypto = platformCrypto(crypto);

/** A platform without Ed25519 and X25519, as older browsers are. */
export const withoutEd25519: SealingCrypto = {
  ...nodeCrypto,
  subtle: new Proxy(nodeCrypto.subtle, {
    get(subtle, name) {
      const method = Reflect.get(subtle, name) as (...given: unknown[]) => Promise<unknown>;
      return (...given: unknown[]) =>
        /Ed25519|X25519/.test(JSON.stringify(given))
          ? Promise.reject(new DOMException('Unrecognized name.', 'NotSupportedError'))
          : method.apply(subtle, given);
    },
  }),
};
