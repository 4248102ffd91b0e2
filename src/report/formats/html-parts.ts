import { escapeHtml } from '../escaped.ts';
import { isolatesAsElements } from '../isolated.ts';
import { unusedTracks, usedTracks } from '../printed/layout-words.ts';
import type { TrackList } from '../track-lists.ts';

/** An element around escaped text, keeping line breaks and isolating text in another direction. */
export const element = (name: string, text: string, more = ''): string =>
  `<${name}${more}><bdi>${isolatesAsElements(escapeHtml(text)).replaceAll('\n', '<br/>')}</bdi></${name}>`;

export const list = (items: readonly string[], more = ''): string =>
  items.length > 0 ? `<ul${more}>${items.map((item) => element('li', item)).join('')}</ul>` : '';

export const section = (title: string, content: string): string =>
  content ? `<section>\n<h2>${isolatesAsElements(escapeHtml(title))}</h2>\n${content}\n</section>\n` : '';

export const pairs = (lines: readonly (readonly [string, string])[]): string =>
  `<dl>${lines.map(pair).join('')}</dl>\n`;

/** Sentences and lists take the full width. */
const WIDE = new Set(['Units', 'Timecode source', 'Mics', 'Listeners', 'Remarks']);

const pair = ([label, text]: readonly [string, string]): string =>
  `<div${WIDE.has(label) ? ' class="wide"' : ''}>${element('dt', label)}${element('dd', text)}</div>`;

/** The tracks of the recorder with everybody who was on each. */
export function layoutTable({ layout }: TrackList): string {
  if (layout.length === 0) return '';
  const rows = usedTracks(layout).map(
    ({ number, lines }) => `<tr>${element('th', number, ' scope="row"')}<td>${list(lines)}</td></tr>`,
  );
  const none = unusedTracks(layout);
  const table = rows.length > 0 ? `<table class="tracks"><tbody>${rows.join('\n')}</tbody></table>` : '';
  return table + (none.length > 0 ? element('p', `Nobody on: ${none.join(', ')}`) : '');
}
