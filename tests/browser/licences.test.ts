import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { DIST } from './harness-server.ts';
import { tap } from './tapping.ts';

test('the licences of every package in the build and of the fonts are under Settings, with no signal too', async () => {
  const packages: Record<string, string[]> = JSON.parse(readFileSync(join(DIST, '.packages.json'), 'utf8'));
  const names = new Set(Object.values(packages).flat());
  expect(names.size).toBeGreaterThan(5);
  await onStage({ worker: true }, async (stage) => {
    await stage.waitOfflineReady();
    await stage.killServer();
    await stage.reload();
    await stage.page.getByRole('link', { name: 'Settings' }).tap();
    await tap(stage.page, 'Licences');
    const list = stage.page.getByRole('dialog').locator('pre');
    await list.filter({ hasText: 'SIL Open Font' }).waitFor();
    const text = (await list.textContent()) ?? '';
    for (const name of names) expect(text).toContain(`\n${name} `);
    // Each brings its own text, not only the name of a licence.
    expect(text).not.toContain('brings no text');
  });
});
