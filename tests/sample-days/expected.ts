import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SampleName } from '../../sample-days/all-days.ts';

/** The expectations for a day, written by hand: lines in the order and the words of the file, spaces evened out. */
export interface Expected {
  readonly head: string;
  readonly totals: string;
  readonly open: string;
  /** One text a take: its line, then its tracks, then its notes. */
  readonly takes: readonly string[];
}

/**
 * Reads `expected-*.txt`. After `TRACKS` comes the table of who is on which track, and after `TAKES` the takes it holds
 * for: called, file, roll, roll and cut by the phone, start, length, marks; notes are set in below their take. Lines that
 * start with # are for the reader.
 */
export function readExpected(name: SampleName): Expected {
  const said = { HEAD: '', TOTALS: '', OPEN: '' };
  const takes: string[][] = [];
  let tracks: string[] = [];
  let inTakes = false;
  for (const line of linesOf(name)) {
    const [, word = '', rest = ''] = /^([A-Z]{4,}) ?(.*)$/.exec(line) ?? [];
    const text = evened(line);
    if (word === 'TRACKS') tracks = [];
    else if (word in said) said[word as keyof typeof said] = rest;
    else if (word === '' && !inTakes) tracks.push(text);
    else if (word === '' && line.startsWith(' ')) takes.at(-1)!.push(text);
    else if (word === '') takes.push([text, ...tracks]);
    if (word !== '') inTakes = word === 'TAKES';
  }
  return {
    head: said.HEAD,
    totals: said.TOTALS,
    open: said.OPEN,
    takes: takes.map((lines) => lines.join('\n')),
  };
}

const linesOf = (name: SampleName): string[] =>
  readFileSync(join(import.meta.dirname, `expected-${name}.txt`), 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'));

export const evened = (text: string): string => text.replaceAll(/ +/g, ' ').trim();
