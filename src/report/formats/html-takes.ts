import { type ListedTake, type ListedUnit, takeList } from '../list/take-list.ts';
import type { ReportModel } from '../model.ts';
import type { Extras } from '../revision/revision.ts';
import { element, list } from './html-parts.ts';

const COLUMNS = ['Take', 'File', 'Start', 'End', 'Length', 'Status'] as const;

/**
 * The list of takes, with the tracks where they change and the notes under each. Each roll is a table of its own: its
 * name stands in the head, which a browser prints again on every page.
 */
export function takesTable(model: ReportModel, extras: Extras): string {
  if (model.takes.length === 0) return '<p>No takes.</p>';
  const rolls: { readonly heading: string; readonly takes: ListedTake[] }[] = [];
  for (const take of takeList(model, extras)) {
    const last = rolls.at(-1);
    if (last && !take.rollHeading) last.takes.push(take);
    else rolls.push({ heading: take.rollHeading, takes: [take] });
  }
  return rolls.map(({ heading, takes }) => rollTable(heading, takes)).join('\n');
}

const HEADS = COLUMNS.map((head) => `<th scope="col" class="${head.toLowerCase()}">${head}</th>`).join('');

function rollTable(heading: string, takes: readonly ListedTake[]): string {
  const roll =
    heading && `<tr class="roll">${element('th', heading, ' colspan="6" scope="colgroup"')}</tr>\n`;
  return [
    `<table class="takes"><thead>${roll}<tr>${HEADS}</tr></thead>`,
    `<tbody>\n${takes.map(takeRows).join('\n')}\n</tbody></table>`,
  ].join('');
}

/** A longer name of a take has a line of its own on a narrow screen. */
const LONG_NAME = 9;

/** A longer word may be broken within, or it would run out of the page. */
const LONGEST_WORD = 30;
const unbroken = (word: string): string[] => (word.length > LONGEST_WORD ? ['unbroken'] : []);

function takeRows(take: ListedTake): string {
  const marks = [
    'take',
    ...(take.circled ? ['circled'] : []),
    ...(take.text.length > LONG_NAME ? ['long'] : []),
    ...unbroken(take.text),
  ];
  const name = element('th', take.text, ` scope="row" class="${marks.join(' ')}"`);
  const cells = (
    [
      [['file', ...unbroken(take.file)].join(' '), take.file],
      ['start', take.start],
      ['end', take.end],
      ['length', take.length],
      ['status', take.words.join(', ')],
    ] as const
  ).map(([column, text]) => element('td', text, ` class="${column}"`));
  const names = take.names ? element('p', take.names, ' class="names"') : '';
  const more = names + list(take.also, ' class="on"') + tracks(take) + list(take.notes, ' class="notes"');
  const under = more ? `\n<tr class="more"><td class="take"></td><td colspan="5">${more}</td></tr>` : '';
  return `<tr${take.isChanged ? ' class="changed"' : ''}>${name}${cells.join('')}</tr>${under}`;
}

const tracks = ({ lists }: ListedTake): string =>
  lists.map((units) => `<ul class="on">${units.map(unit).join('')}</ul>`).join('');

const unit = ({ text, isNew }: ListedUnit): string => element('li', text, isNew ? ' class="new"' : '');
