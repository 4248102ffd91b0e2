// Gathers the licences of everything that ships: the packages the build was made of, the worker's, and the fonts'.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const FONT_LICENCE = join(ROOT, 'src/report/pdf/fonts/LICENCE.txt');
/** The worker is written after the bundle, out of these. */
export const OF_THE_WORKER = ['workbox-core', 'workbox-precaching', 'workbox-routing', 'workbox-strategies'];
/** What the bundler itself puts into the bundle: how parts are loaded that come later. */
const OF_THE_BUNDLER = ['vite', 'rolldown'];

/** The packages, each once, that these modules are from. */
export const packagesOf = (moduleIds) => [
  ...new Set(moduleIds.flatMap((id) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(id)?.[1] ?? [])),
];

function licenceOf(name) {
  const folder = join(ROOT, 'node_modules', name);
  const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)(\.|$|-mit)/i.test(entry));
  const text = file
    ? readFileSync(join(folder, file), 'utf8').trim()
    : 'The package brings no text of its licence.';
  // A bundler's file goes on with the licences of what only runs where the app is built.
  const own = text.split(/^# Licenses of bundled dependencies/m)[0].trim();
  return `${name} ${version}: ${license ?? 'see below'}\n\n${own}`;
}

/** The list as one text; throws where a licence that must be there is not. */
export function licenceList(moduleIds) {
  if (!existsSync(FONT_LICENCE)) throw new Error('The licence of the fonts is missing');
  const names = [...new Set([...packagesOf(moduleIds), ...OF_THE_WORKER, ...OF_THE_BUNDLER])].sort();
  const parts = [
    'Rollbook is under the MIT licence. It is built with the work of others, each under its own licence.',
    ...names.map(licenceOf),
    `Fonts of the report's pages\n\n${readFileSync(FONT_LICENCE, 'utf8').trim()}`,
  ];
  return `${parts.join(`\n\n${'-'.repeat(60)}\n\n`)}\n`;
}
