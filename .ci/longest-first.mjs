// The order of the test files: the longest begin first, so that no process is left with one of them at the end.
import { BaseSequencer } from 'vitest/node';

/** What takes longest, for a machine on which nothing was measured yet. */
const LONGEST = [
  'browser/walk',
  'engines/lighthouse',
  'browser/copy-beside',
  'browser/storage-faults',
  'browser/update',
  'browser/wrap',
  'browser/unsaved',
  'engines/main-job',
  'browser/kill',
  'browser/kept-files',
];

const place = ({ moduleId }) => LONGEST.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`));

export class LongestFirst extends BaseSequencer {
  async sort(files) {
    const sorted = await super.sort(files);
    const long = sorted.filter((file) => place(file) >= 0).sort((one, other) => place(one) - place(other));
    return [...long, ...sorted.filter((file) => place(file) < 0)];
  }
}
