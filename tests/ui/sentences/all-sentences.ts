import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { STARTING_RIGS } from '../../../src/commands/rig/starting-rigs.ts';
import { CAUTIONS } from '../../../src/upkeep/due/cautions.ts';
import { sentencesIn } from './find-sentences.ts';

const ROOT = join(import.meta.dirname, '../../..');

const filesIn = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true })
    .map((path) => `${folder}/${String(path).replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/.test(path))
    .sort();

const sentencesOf = (files: readonly string[]): string[] =>
  files.flatMap((file) => sentencesIn(file, readFileSync(join(ROOT, file), 'utf8')));

/** Written in the language of pages, of which nothing is read. */
const OPERATORS = 'src/report/pdf/picture-fonts.ts';

/** The report's web page is written with its markup and its style around what is read. */
const isRead = (text: string): boolean => !/<|class=|charset=|: [^{]*;/.test(text);

/** Every text the app can show, by feature: each once, in the order of its files. */
export function allSentences(): ReadonlyMap<string, readonly string[]> {
  const features = readdirSync(join(ROOT, 'src/ui')).sort();
  const groups: [string, string[]][] = [
    ...features.map((name): [string, string[]] => [name, sentencesOf(filesIn(`src/ui/${name}`))]),
    ['rigs to start from', STARTING_RIGS.flatMap(({ name, about }) => [name, about])],
    ['cautions', Object.values(CAUTIONS)],
    ['the report', sentencesOf(filesIn('src/report').filter((file) => file !== OPERATORS)).filter(isRead)],
    ['the start', [...sentencesOf(['src/main.tsx']), ...OF_THE_PAGE.flatMap(sentencesOfPage)]],
  ];
  return new Map(groups.map(([name, sentences]) => [name, [...new Set(sentences)]]));
}

/** The page and the manifest are read for their few texts, whatever else they hold. */
const OF_THE_PAGE = [
  { file: 'index.html', text: /<p>([^<]+)<\/p>|name="description" content="([^"]+)"/g },
  { file: 'vite.config.ts', text: /(?:name|description): '([A-Z][^']+)'/g },
] as const;

const sentencesOfPage = ({ file, text }: (typeof OF_THE_PAGE)[number]): string[] =>
  [...readFileSync(join(ROOT, file), 'utf8').matchAll(text)].map(([, one, other]) => one ?? other ?? '');
