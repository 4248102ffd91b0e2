import { describe, expect, test } from 'vitest';
import { type OutgoingFile, routeFor, type SendingDevice, sharable } from '../../src/app/sharing.ts';

const named = (...names: string[]): OutgoingFile[] =>
  names.map((name) => ({ name, type: 'text/plain', content: 'x' }));

/** A browser refuses all files for one of a kind that it does not know. */
const device: SendingDevice = {
  canShare: (files) => files.every(({ name }) => name.endsWith('.txt')),
  share: () => Promise.resolve(),
  canDownload: true,
  download: () => undefined,
  copy: () => Promise.resolve(),
};

describe('the share sheet', () => {
  test('gets the files that it takes, though it refuses one of them', () => {
    const files = named('a.txt', 'b.otio', 'c.txt');
    expect(sharable(device, files).map(({ name }) => name)).toEqual(['a.txt', 'c.txt']);
    expect(routeFor(device, files)).toBe('share');
  });

  test('is not the way for files that it takes none of', () => {
    expect(routeFor(device, named('b.otio'))).toBe('download');
    expect(routeFor({ ...device, canDownload: false }, named('b.otio'))).toBe('copy');
  });
});
