import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { growthInDays } from './in-days.ts';
import { growthInFacts, growthInFiles, growthInTakes, growthInTracks } from './measured.ts';
import { growthPicture } from './picture.ts';
import { exponentOf, figure, type Growth, sizesOf } from './series.ts';

const README = resolve(import.meta.dirname, '../README.md');
const PICTURE = resolve(import.meta.dirname, '../../pictures/growth.svg');

/** Measures how cost grows, prints it, writes it into the README of the bench, and draws its picture. */
export async function printGrowth(): Promise<void> {
  const all: Growth[] = [growthInTakes(), growthInTracks(), growthInFacts(), await growthInFiles()];
  all.push(await growthInDays());
  const text = all.map(tableOf).join('\n\n');
  console.log(text);
  const old = readFileSync(README, 'utf8');
  const block = `<!-- growth -->\n${text}\n<!-- /growth -->`;
  writeFileSync(
    README,
    old.replace(/<!-- growth -->[\s\S]*<!-- \/growth -->/, () => block),
  );
  writeFileSync(PICTURE, growthPicture(all));
}

function tableOf({ of, with: held, series }: Growth): string {
  const sizes = sizesOf(series);
  const lines = series.map((one) => {
    const costs = sizes.map((size) => {
      const found = one.points.find((point) => point.size === size);
      return found ? figure(found.cost) : '';
    });
    return `| ${one.work}, ${one.unit} | ${costs.join(' | ')} | ${exponentOf(one).toFixed(1)} |`;
  });
  return [
    `| ${of} (${held}) | ${sizes.map((size) => size.toLocaleString('en-GB')).join(' | ')} | exponent |`,
    `| --- |${' --- |'.repeat(sizes.length + 1)}`,
    ...lines,
  ].join('\n');
}
