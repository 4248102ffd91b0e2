import { describe, expect, test } from 'vitest';
import { WORD_MEANS } from '../../../src/ui/help/words.ts';
import { MARK_MEANS } from '../../../src/ui/words/means.ts';
import { allSentences } from './all-sentences.ts';
import { sentencesIn } from './find-sentences.ts';
import { NOT_SAID } from './not-said.ts';
import { TERMS } from './terms.ts';

const WRITE_ANEW = 'npx vitest run --project unit-alone tests/ui/sentences -u';

const HEAD = `# Every sentence of the app

To be read by a person, before a release and after every change of words. What is filled in stands in braces,
choices in brackets. Written by a test, which fails when this is not what the code says; written anew by

    ${WRITE_ANEW}
`;

const sentences = allSentences();
const all = [...sentences].flatMap(([feature, said]) => said.map((text) => ({ feature, text })));

/** Without the names of what is filled in. */
const plain = all.map(({ feature, text }) => ({ feature, text: text.replace(/\{[^}]*\}/g, '{}') }));

test('every sentence of the app is in one file, which is what the code says', async () => {
  const parts = [...sentences].map(
    ([feature, said]) => `\n## ${feature}\n\n${said.map((text) => `- ${text}\n`).join('')}`,
  );
  await expect(HEAD + parts.join('')).toMatchFileSnapshot(
    '../sentences.md',
    `Written anew by: ${WRITE_ANEW}`,
  );
});

test('no sentence says what was riddled', () => {
  const found = plain.filter(({ text }) => NOT_SAID.some((word) => word.test(text)));
  expect(found).toEqual([]);
});

test('no name of the code reaches the screen', () => {
  const isCode = /\b[a-z]+[A-Z]\w*\b|undefined|\[object|=>|\bnull\b/;
  expect(plain.filter(({ text }) => isCode.test(text.replace(UNITS, '')))).toEqual([]);
});

/** Units and names that are written so by those who made them. */
const UNITS = /\b(kHz|kB|MHz|dB|iPhone|iXML|bext|Mbit|GiB|JavaScript)\b/g;

describe('a term of the trade that the screens use', () => {
  const inHelp = [...WORD_MEANS.map(([word]) => word), ...Object.values(MARK_MEANS).map(({ word }) => word)]
    .flatMap((words) => words.split(', '))
    .map((word) => word.toLowerCase());
  const onScreens = all.filter(({ feature }) => feature !== 'help');
  test.each(TERMS)('is in Help: %s', (term) => {
    const isUsed = onScreens.some(({ text }) => new RegExp(`\\b${term}`, 'i').test(text));
    expect(isUsed, 'used by a screen; if by none, take it off the list').toBe(true);
    expect(inHelp).toContain(term.toLowerCase());
  });

  test('and nothing is in Help that no screen says', () => {
    const screens = onScreens.map(({ text }) => text.toLowerCase());
    const words = WORD_MEANS.flatMap(([word]) => word.split(', '));
    expect(words.filter((word) => !screens.some((text) => text.includes(word.toLowerCase())))).toEqual([]);
  });
});

describe('sentences are found', () => {
  const found = (code: string): string[] => sentencesIn('one.tsx', code);

  test.each([
    ['text of an element', 'const a = <p>Paste the <b>cast</b> list</p>', ['Paste the cast list']],
    ['what is filled in', 'const a = <p>Track {answer.name}</p>', ['Track {name}']],
    ['choices', "const a = <p>{on ? 'Unmute' : 'Mute'} {pack}</p>", ['[Unmute / Mute] {pack}']],
    ['labels', 'const a = <Button label="Less">−</Button>', ['Less']],
    ['templates', `tell(\`\${name} cut\`)`, ['{name} cut']],
    ['messages within a condition', "if (run(mute(), 'Muted')) close()", ['Muted']],
    [
      'both numbers',
      `const a = \`\${countOf(many, 'clash', 'clashes')} left\``,
      ['{count} clash/clashes left'],
    ],
    ['tables of words', "const STATE_WORD = { a: 'free' }", ['free']],
    ['functions of words', "function moveWords() { return 'mute'; }", ['mute']],
    ['entities', 'const a = <p>Here &amp; now</p>', ['Here & now']],
  ])('%s', (_, code, sentences) => expect(found(code)).toEqual(sentences));

  test.each([
    ['classes', 'const a = <p class="row order-row" />'],
    ['classes made of others', `const a = <p class={\`row \${look} wide\`} />`],
    ['imports', "import { a } from 'words of a file'"],
    ['types', "type A = 'one of two' | 'two of two'"],
    ['codes', "fail({ code: 'too-long' })"],
    ['comparisons', "if (state === 'not saved') go()"],
    ['keys', "const a = { 'not saved': 1 }"],
    ['separators', "names.join(' and then ')"],
  ])('but not %s', (_, code) => expect(found(code)).toEqual([]));
});
