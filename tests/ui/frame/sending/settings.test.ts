import { beforeEach, expect, test, vi } from 'vitest';

const KEY = 'rollbook-wrap';
const kept = new Map<string, string>();
vi.stubGlobal('localStorage', {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => kept.set(key, value),
});

/** The settings as a start of the app reads them, with this remembered. */
async function started(remembered?: string) {
  if (remembered !== undefined) kept.set(KEY, remembered);
  vi.resetModules();
  return import('../../../../src/ui/frame/sending/settings.ts');
}

beforeEach(() => kept.clear());

test('what was chosen is there after the next start', async () => {
  const first = await started();
  first.setWrap({ paper: 'letter', to: 'post@example.org' });
  const { wrapSettings } = await started();
  expect(wrapSettings.value).toMatchObject({ paper: 'letter', to: 'post@example.org' });
});

test('what cannot be read, or names what there is not, falls back field by field', async () => {
  expect((await started('not json')).wrapSettings.value).toMatchObject({ paper: 'a4', lines: 'take' });
  const { wrapSettings } = await started(
    JSON.stringify({
      formats: ['txt', 'fax'],
      paper: 'a5',
      lines: 'track',
      to: 7,
      columns: { take: ['no'] },
    }),
  );
  expect(wrapSettings.value).toMatchObject({ formats: ['txt'], paper: 'a4', lines: 'track', to: '' });
  expect(wrapSettings.value.columns.take.length).toBeGreaterThan(1);
});

test('addresses may be apart by commas, semicolons or blanks', async () => {
  const { recipients } = await started();
  expect(recipients(' a@example.org; b@example.org,c@example.org\n')).toEqual([
    'a@example.org',
    'b@example.org',
    'c@example.org',
  ]);
});
