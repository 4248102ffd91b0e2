import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { growthInDays } from './in-days.ts';
import { growthInFacts, growthInFiles, growthInTakes, growthInTracks } from './measured.ts';
import { growthPicture } from './picture.ts';
import { exponentOf, figure, type Growth, sizesOf } from './series.ts';

const PICTURE = resolve(import.meta.dirname, '../../pictures/growth.svg');

/** Measures how cost grows, prints it as the table of DEVELOPERS.md, and draws its picture. */
export async function printGrowth(): Promise<void> {
  const all: Growth[] = [growthInTakes(), growthInTracks(), growthInFacts(), await growthInFiles()];
  all.push(await growthInDays());
  for (const { of, with: held, series } of all) {
    const sizes = sizesOf(series);
    console.log(
      `\n| ${of} (${held}) | ${sizes.map((size) => size.toLocaleString('en-GB')).join(' | ')} | exponent |`,
    );
    console.log(`| --- |${' --- |'.repeat(sizes.length + 1)}`);
    for (const one of series) {
      const costs = sizes.map((size) => {
        const found = one.points.find((point) => point.size === size);
        return found ? figure(found.cost) : '';
      });
      console.log(`| ${one.work}, ${one.unit} | ${costs.join(' | ')} | ${exponentOf(one).toFixed(1)} |`);
    }
  }
  writeFileSync(PICTURE, growthPicture(all));
}
