import type { TakeId } from '../../day/model.ts';
import { cleanLine } from '../clean-text.ts';
import { SECOND_FORM } from '../form.ts';
import type { ReportModel } from '../model.ts';
import { counted } from '../printed/figures.ts';
import type { Extras } from '../revision/revision.ts';
import { textBlocks } from './text.ts';
import type { TextBlock } from './text-lines.ts';

export interface MailtoLink {
  readonly href: string;
  /** What did not fit the link, in reading order; empty if the whole report is in it. */
  readonly leftOut: {
    readonly parts: readonly TextBlock['part'][];
    readonly takes: readonly TakeId[];
  };
}

export interface MailtoOptions extends Extras {
  /** The maximum encoded length of the link. */
  readonly budget?: number;
}

/** Some mail programs cut or refuse longer links (from memory; RFC 6068 names no limit). */
export const MAILTO_BUDGET = 1800;

/** Percent-encoded UTF-8 (RFC 6068 section 2, 5): space is %20, a line break %0D%0A. */
export const mailtoValue = (text: string): string =>
  encodeURIComponent(text.replaceAll(/\p{Cs}/gu, '\ufffd').replaceAll(/\r\n?|\n/g, '\r\n'));

/** In an address everything but the at sign is encoded; commas separate addresses (RFC 6068 section 2). */
const addresses = (to: readonly string[]): string =>
  to
    .map((address) => mailtoValue(cleanLine(address)).replaceAll('%40', '@'))
    .filter(Boolean)
    .join(',');

/** `mailto:` with a subject and a body of any length (RFC 6068). */
export const mailtoHref = (to: readonly string[], subject: string, body: string): string =>
  `mailto:${addresses(to)}?subject=${mailtoValue(cleanLine(subject))}&body=${mailtoValue(body)}`;

/**
 * A link that opens a mail with the report in it. If the report is longer than `budget` encoded characters,
 * whole parts are left out, the body says which, and `leftOut` holds them: totals are dropped last, takes
 * from the end, never half a take.
 */
export function reportMailto(
  model: ReportModel,
  to: readonly string[],
  subject: string,
  { budget = MAILTO_BUDGET, ...extras }: MailtoOptions = {},
): MailtoLink {
  const blocks = textBlocks(model, extras);
  const whole = mailtoHref(to, subject, bodyOf(blocks));
  if (whole.length <= budget) return { href: whole, leftOut: { parts: [], takes: [] } };
  const empty = mailtoHref(to, subject, '').length;
  const kept = new Set<TextBlock>();
  // Room for the longest sentence about missing parts.
  let left = budget - empty - mailtoValue(leftOutText(model, blocks, blocks)).length - PADDING;
  for (const block of byImportance(blocks)) {
    const cost = mailtoValue(`${block.lines.join('\n')}\n`).length;
    // The takes kept must be the first ones, or the reader could not tell which are missing.
    if (cost > left) {
      if (block.part === 'takes') break;
      continue;
    }
    left -= cost;
    kept.add(block);
  }
  const out = blocks.filter((block) => !kept.has(block));
  const body = bodyOf(blocks.filter((block) => kept.has(block))) + leftOutText(model, out, blocks);
  return { href: mailtoHref(to, subject, body), leftOut: leftOutOf(out) };
}

const PADDING = 12;

const bodyOf = (blocks: readonly TextBlock[]): string =>
  blocks.flatMap(({ lines }) => lines.map((line) => `${line}\n`)).join('');

const IMPORTANCE: readonly TextBlock['part'][] = [
  'head',
  'changes',
  'signature',
  'open',
  'totals',
  'layout',
  'takes',
];

const byImportance = (blocks: readonly TextBlock[]): TextBlock[] =>
  blocks.toSorted((a, b) => IMPORTANCE.indexOf(a.part) - IMPORTANCE.indexOf(b.part));

const leftOutOf = (out: readonly TextBlock[]) => ({
  parts: [...new Set(out.map(({ part }) => part))],
  takes: out.flatMap(({ take }) => take ?? []),
});

const PART_WORDS: Record<Exclude<TextBlock['part'], 'takes'>, string> = {
  head: 'the head',
  changes: 'what changed',
  signature: 'the signature',
  open: 'what is not settled',
  layout: 'the tracks',
  totals: 'the totals',
};

/** `'Left out here, as the mail would be too long: the tracks, 12 of 14 takes. The whole report is in its file.'` */
function leftOutText({ form }: ReportModel, out: readonly TextBlock[], all: readonly TextBlock[]): string {
  const { parts, takes } = leftOutOf(out);
  const count = all.filter(({ take }) => take !== null).length;
  const words = parts.map((part) =>
    part === 'takes' ? `${takes.length} of ${counted(count, 'take')}` : PART_WORDS[part],
  );
  return `\nLEFT OUT HERE, as the mail would be too long:\n${words.join(', ')}.\n${form > SECOND_FORM ? 'The whole report comes in a file of its own.' : 'The whole report is in its file.'}\n`;
}
