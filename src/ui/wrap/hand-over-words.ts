import { type CheckedSoFar, withoutCopies } from '../../day/wrap/hand-over.ts';
import { countOf } from '../words/chain.ts';

const CHECK_WORDS: Record<CheckedSoFar['was'], (count: number) => string> = {
  whole: () => '',
  never: () => 'The files were not checked against the log.',
  stopped: () => 'The card check was stopped before the last file.',
  open: (count) =>
    `${countOf(count, 'difference')} between the files and the log ${count === 1 ? 'is' : 'are'} open.`,
  'before-last-takes': (count) =>
    `${countOf(count, 'take')} ${count === 1 ? 'was' : 'were'} logged since the card was checked.`,
};

/** What speaks against handing these over yet; empty if nothing does. */
export function handOverCautions(
  { was, count }: CheckedSoFar,
  carriers: readonly { readonly name: string; readonly copies: number }[],
): string[] {
  const check = CHECK_WORDS[was](count);
  const copies = withoutCopies(carriers).map(({ name, copies }) =>
    copies === 0 ? `${name} has no checked copy.` : `${name} has only one checked copy.`,
  );
  const loss = copies.length > 0 ? ['Cards get lost: make two checked copies first.'] : [];
  return [...(check ? [check] : []), ...copies, ...loss];
}
