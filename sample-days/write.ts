// Writes small.txt and full.txt beside this file from the stories they are told in, and lanes.json, which the first
// screen draws:
//
//   node -e "import('vite').then(({ runnerImport }) => runnerImport('./sample-days/write.ts'))"
//
// A test holds the files to the stories, so a story that changes is followed by this command.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dayFileOfStory, STORIES } from './all-days.ts';
import { lanesOf } from './lanes.ts';

for (const [name, tell] of Object.entries(STORIES)) {
  writeFileSync(join(import.meta.dirname, `${name}.txt`), dayFileOfStory(tell()));
}
writeFileSync(
  join(import.meta.dirname, 'lanes.json'),
  `${JSON.stringify(lanesOf(STORIES.full().day), null, 2)}\n`,
);
