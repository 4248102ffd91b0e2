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

const HARBOUR = { production: 'Harbour', sample: false };
const SALT_ROAD = { production: 'Salt Road', sample: false };

test('what was chosen is there after the next start', async () => {
  const first = await started();
  first.setWrap(HARBOUR, { paper: 'letter', to: 'post@example.org' });
  const { wrapSettings } = await started();
  expect(wrapSettings(HARBOUR)).toMatchObject({ paper: 'letter', to: 'post@example.org' });
});

test('what cannot be read, or names what there is not, falls back field by field', async () => {
  expect((await started('not json')).wrapSettings(HARBOUR)).toMatchObject({ paper: 'a4', lines: 'take' });
  const { wrapSettings } = await started(
    JSON.stringify({
      formats: ['txt', 'fax'],
      paper: 'a5',
      lines: 'track',
      own: { '=harbour': { to: 7 }, '=salt road': 'editors' },
      columns: { take: ['no'] },
    }),
  );
  expect(wrapSettings(HARBOUR)).toMatchObject({ formats: ['txt'], paper: 'a4', lines: 'track', to: '' });
  expect(wrapSettings(HARBOUR).columns.take.length).toBeGreaterThan(1);
});

test('a signature and recipients belong to the production, paper and formats to the phone', async () => {
  const { setWrap, wrapSettings } = await started();
  setWrap(HARBOUR, { paper: 'letter', to: 'post@example.org', signature: 'I. Berg' });
  expect(wrapSettings(SALT_ROAD)).toMatchObject({ paper: 'letter', to: '', signature: '' });
  setWrap(SALT_ROAD, { to: 'cutting@example.org' });
  expect(wrapSettings({ production: ' HARBOUR', sample: false })).toMatchObject({
    to: 'post@example.org',
    signature: 'I. Berg',
  });
});

test('what is set on a sample day holds for sample days only, and is there after the next start', async () => {
  const first = await started();
  const sample = { production: 'Harbour', sample: true };
  first.setWrap(sample, { formats: ['csv'], paper: 'letter', to: 'nobody@example.org' });
  const { wrapSettings } = await started();
  expect(wrapSettings(HARBOUR)).toMatchObject({ formats: ['pdf', 'plain', 'txt'], paper: 'a4', to: '' });
  expect(wrapSettings(sample)).toMatchObject({ formats: ['csv'], paper: 'letter', to: 'nobody@example.org' });
});

test('forgets a production and no other, and all that was set on sample days', async () => {
  const { forgetWrap, isSameWhose, setWrap, wrapSettings } = await started();
  const sample = { production: 'Harbour', sample: true };
  setWrap(HARBOUR, { to: 'post@example.org', paper: 'letter' });
  setWrap(SALT_ROAD, { to: 'cutting@example.org' });
  setWrap(sample, { to: 'nobody@example.org', paper: 'letter' });
  forgetWrap({ production: 'harbour ', sample: false });
  forgetWrap(sample);
  expect(isSameWhose(HARBOUR, sample)).toBe(false);
  const again = await started();
  for (const settings of [wrapSettings, again.wrapSettings]) {
    expect(settings(HARBOUR)).toMatchObject({ to: '', paper: 'letter' });
    expect(settings(SALT_ROAD)).toMatchObject({ to: 'cutting@example.org' });
    expect(settings(sample)).toMatchObject({ to: '', paper: 'a4' });
  }
  expect([...kept.values()].join()).not.toMatch(/post@|nobody@/);
});

test('remembers the last twenty productions', async () => {
  const { setWrap } = await started();
  const of = (number: number) => ({ production: `Film ${number}`, sample: false });
  for (let number = 1; number <= 25; number += 1) setWrap(of(number), { to: `${number}@example.org` });
  const { wrapSettings } = await started();
  expect([5, 6, 25].map((number) => wrapSettings(of(number)).to)).toEqual([
    '',
    '6@example.org',
    '25@example.org',
  ]);
});

test('addresses may be apart by commas, semicolons or blanks', async () => {
  const { recipients } = await started();
  expect(recipients(' a@example.org; b@example.org,c@example.org\n')).toEqual([
    'a@example.org',
    'b@example.org',
    'c@example.org',
  ]);
});
