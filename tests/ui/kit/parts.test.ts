import { h } from 'preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { Choice } from '../../../src/ui/kit/field.tsx';
import { Row } from '../../../src/ui/kit/row.tsx';
import { openSection, Section } from '../../../src/ui/kit/section.tsx';
import { show } from '../small-dom.ts';

afterEach(() => vi.unstubAllGlobals());

describe('a row', () => {
  test('is a button where a tap does something, and none where it only informs', () => {
    const onTap = vi.fn();
    const { root } = show(h(Row, { title: 'Ines', word: 'muted', onTap }));
    const [button] = root.all('button');
    expect(button!.textContent).toBe('Inesmuted');
    button!.tap();
    expect(onTap).toHaveBeenCalledOnce();
    expect(show(h(Row, { title: 'Ines' })).root.all('button')).toEqual([]);
  });

  test('leaves no empty line below its title, and no empty place before it', () => {
    const { root } = show(h(Row, { title: 'Ines', under: '' }));
    const classes = root.all('span').map(({ attributes }) => attributes.get('class'));
    expect(classes).toEqual(['row-text', 'row-word']);
  });
});

describe('a section', () => {
  test('opens at a tap, and is open still when its page is shown again', async () => {
    const section = () => h(Section, { name: 'Batteries', under: '2 due', children: 'the list' });
    const first = show(section());
    expect(first.root.textContent).not.toContain('the list');
    first.root.all('button')[0]!.tap();
    await first.settled();
    expect(first.root.textContent).toContain('the list');
    expect(first.root.all('button')[0]!.attributes.get('aria-expanded')).toBe('true');
    first.gone();
    const again = show(section());
    expect(again.root.textContent).toContain('the list');
    again.root.all('button')[0]!.tap();
    await again.settled();
    expect(again.root.textContent).not.toContain('the list');
  });

  test('is opened by what leads to it', () => {
    openSection('Media');
    const { root } = show(h(Section, { name: 'Media', under: '', children: 'the cards' }));
    expect(root.textContent).toContain('the cards');
  });
});

describe('a choice', () => {
  const options = [
    { value: 'a4', name: 'A4' },
    { value: 'letter', name: 'US Letter' },
  ] as const;
  const choice = (value: 'a4' | 'letter' | '', onChoose: (to: string) => void = () => {}) =>
    show(h(Choice<'a4' | 'letter'>, { label: 'Paper', value, options, onChoose })).root;

  test('presses the one that is chosen, and gives the one that is tapped', () => {
    const onChoose = vi.fn();
    const buttons = choice('a4', onChoose).all('button');
    expect(buttons.map(({ attributes }) => attributes.get('aria-pressed'))).toEqual(['true', 'false']);
    buttons[1]!.tap();
    expect(onChoose).toHaveBeenCalledWith('letter');
  });

  test('shows a word that this version does not know, and presses nothing', () => {
    const root = choice('a0' as 'a4');
    expect(root.textContent).toContain('a0');
    expect(root.all('button').map(({ attributes }) => attributes.get('aria-pressed'))).toEqual([
      'false',
      'false',
    ]);
    expect(choice('').all('span')).toEqual([]);
  });
});
