import { describe, expect, test } from 'vitest';
import { bytesOfHex, hexOf, joined, utf8 } from '../../../src/exchange/sealed/bytes.ts';
import { hkdf } from '../../../src/exchange/sealed/day-keys.ts';
import { isSignedBy, newWriterKey, signed } from '../../../src/exchange/sealed/signing.ts';
import { isSignedStatement, type Statement } from '../../../src/exchange/sealed/statements.ts';
import { nodeCrypto } from './crypto.ts';

const { subtle } = nodeCrypto;

/** 00, 01, 02 and so on. */
const rising = (from: number, to: number) => Uint8Array.from({ length: to - from + 1 }, (_, at) => from + at);

describe('what the platform computes is what is published', () => {
  // RFC 5869, appendix A, cases 1 to 3.
  test.each([
    [
      'case 1',
      { secret: '0b'.repeat(22), salt: rising(0, 0x0c), info: rising(0xf0, 0xf9), length: 42 },
      '3cb25f25faacd57a90434f64d0362f2a2d2d0a90cf1a5a4c5db02d56ecc4c5bf34007208d5b887185865',
    ],
    [
      'case 2',
      { secret: hexOf(rising(0, 0x4f)), salt: rising(0x60, 0xaf), info: rising(0xb0, 0xff), length: 82 },
      'b11e398dc80327a1c8e7f78c596a49344f012eda2d4efad8a050cc4c19afa97c59045a99cac7827271cb41c65e590e09' +
        'da3275600c2f09b8367793a9aca3db71cc30c58179ec3e87c14c01d5c1f3434f1d87',
    ],
    [
      'case 3, no salt and no label',
      { secret: '0b'.repeat(22), salt: rising(0, -1), info: rising(0, -1), length: 42 },
      '8da4e775a563c18f715f802a063c5a31b8a11f5c5ee1879ec3454e5f3c738d2d9d201395faa4b61a96c8',
    ],
  ])('HKDF: RFC 5869 %s', async (_, { secret, salt, info, length }, expected) => {
    expect(hexOf(await hkdf(subtle, bytesOfHex(secret), salt, info, length))).toBe(expected);
  });

  // RFC 8032, section 7.1, tests 1 to 3: public key, message, signature.
  test.each([
    [
      'd75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a',
      '',
      'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46b' +
        'd25bf5f0595bbe24655141438e7a100b',
    ],
    [
      '3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c',
      '72',
      '92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c' +
        '387b2eaeb4302aeeb00d291612bb0c00',
    ],
    [
      'fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025',
      'af82',
      '6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc659' +
        '4a7c15e9716ed28dc027beceea1ec40a',
    ],
  ])('Ed25519: RFC 8032, key %s', async (key, message, signature) => {
    expect(await isSignedBy(nodeCrypto, key, bytesOfHex(signature), bytesOfHex(message))).toBe(true);
    expect(await isSignedBy(nodeCrypto, key, bytesOfHex(signature), bytesOfHex(`${message}00`))).toBe(false);
  });

  // RFC 6979, appendix A.2.5: P-256, SHA-256, message "sample"; r and s as W3C Web Cryptography lays them out.
  test('ECDSA P-256: RFC 6979 A.2.5', async () => {
    const key =
      '0460fed4ba255a9d31c961eb74c6356d68c049b8923b61fa6ce669622e60f29fb6' +
      '7903fe1008b8bc99a41ae9e95628bc64f2f1b20c2d7e9f5177a3c294d4462299';
    const signature =
      'efd48b2aacb6a8fd1140dd9cd45e81d69d2c877b56aaf991c34d0ea84eaf3716' +
      'f7cb1c942d657c41d436c7a1b6e29f65f3e900dbb9aff4064dc4ab2f843acda8';
    const message = new TextEncoder().encode('sample');
    expect(await isSignedBy(nodeCrypto, key, bytesOfHex(signature), message)).toBe(true);
    expect(await isSignedBy(nodeCrypto, key, bytesOfHex(signature), new TextEncoder().encode('test'))).toBe(
      false,
    );
  });

  // McGrew and Viega, "The Galois/Counter Mode of Operation", appendix B, cases 14 and 16.
  test.each([
    [
      'case 14',
      '00'.repeat(32),
      '00'.repeat(12),
      '',
      '00'.repeat(16),
      'cea7403d4d606b6e074ec5d3baf39d18',
      'd0d1c8a799996bf0265b98b5d48ab919',
    ],
    [
      'case 16',
      'feffe9928665731c6d6a8f9467308308'.repeat(2),
      'cafebabefacedbaddecaf888',
      'feedfacedeadbeeffeedfacedeadbeefabaddad2',
      'd9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525' +
        'b16aedf5aa0de657ba637b39',
      '522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838' +
        'c5f61e6393ba7a0abcc9f662',
      '76fc6ece0f4e1768cddf8853bb2d551b',
    ],
  ])('AES-256-GCM: %s', async (_, key, nonce, bound, plain, sealed, tag) => {
    const imported = await subtle.importKey('raw', bytesOfHex(key), 'AES-GCM', false, ['encrypt', 'decrypt']);
    const how = { name: 'AES-GCM', iv: bytesOfHex(nonce), additionalData: bytesOfHex(bound) };
    const made = await subtle.encrypt(how, imported, bytesOfHex(plain));
    expect(hexOf(new Uint8Array(made))).toBe(sealed + tag);
    const opened = await subtle.decrypt(how, imported, joined(bytesOfHex(sealed), bytesOfHex(tag)));
    expect(hexOf(new Uint8Array(opened))).toBe(plain);
  });
});

test('a statement without what statements gained later is signed over the bytes of the first form', async () => {
  const owner = await newWriterKey(nodeCrypto);
  const said = ['writer-removed', 3, owner.writer, '1e'.repeat(16), 'phoneb', 12, 340];
  const bytes = utf8(JSON.stringify(['rollbook 1 statement', 'day', ...said]));
  const statement = {
    ...{
      kind: 'writer-removed',
      number: 3,
      owner: owner.writer,
      writer: '1e'.repeat(16),
      database: 'phoneb',
    },
    ...{ counted: 12, upTo: 340, signature: hexOf(await signed(nodeCrypto, owner, bytes)) },
  } as Statement;
  expect(await isSignedStatement(nodeCrypto, 'day', owner.publicKey, statement)).toBe(true);
  const newKey = { number: 2, boxes: {} };
  const more = { ...statement, newKey } as Statement;
  expect(await isSignedStatement(nodeCrypto, 'day', owner.publicKey, more)).toBe(false);
});
