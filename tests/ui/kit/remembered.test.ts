import { beforeEach, describe, expect, test, vi } from 'vitest';

interface Element {
  name?: string;
  content?: string;
  remove?: () => void;
}

/** A page with this in its storage, or with storage refused. */
function somePage(kept: Record<string, string> | 'refused') {
  const refuse = (): never => {
    throw new DOMException('no', 'SecurityError');
  };
  const stored = new Map(kept === 'refused' ? [] : Object.entries(kept));
  vi.stubGlobal(
    'localStorage',
    kept === 'refused'
      ? { getItem: refuse, setItem: refuse }
      : {
          getItem: (key: string) => stored.get(key) ?? null,
          setItem: (key: string, value: string) => void stored.set(key, value),
        },
  );
  const dataset: Record<string, string> = {};
  let around: Element | undefined;
  vi.stubGlobal('document', {
    documentElement: { dataset },
    head: {
      prepend: (element: Element) => {
        around = element;
      },
    },
    querySelector: () => around ?? null,
    createElement: (): Element => ({
      remove: () => {
        around = undefined;
      },
    }),
  });
  return { stored, dataset, around: () => around?.content };
}

const looks = () => import('../../../src/ui/kit/looks.ts');
const hands = () => import('../../../src/ui/kit/hand.ts');

beforeEach(() => vi.resetModules());

describe('the look of this phone', () => {
  test('is put on the page and around it, and remembered', async () => {
    const page = somePage({});
    const { chooseLook, look } = await looks();
    expect(look.value).toBe('system');
    chooseLook('sunlight');
    expect([page.dataset.look, page.around(), page.stored.get('rollbook-look')]).toEqual([
      'sunlight',
      '#fff',
      'sunlight',
    ]);
    chooseLook('system');
    expect([page.dataset.look, page.around()]).toEqual([undefined, undefined]);
  });

  test.each([
    [{}, 'system'],
    [{ 'rollbook-look': 'light' }, 'light'],
    [{ 'rollbook-look': 'dim', 'rollbook-look-before-dim': 'sunlight' }, 'sunlight'],
    [{ 'rollbook-look': 'dim', 'rollbook-look-before-dim': 'dim' }, 'system'],
  ] as const)(
    '%j: one tap dims, and one goes back to %s, never into the dark again',
    async (kept, before) => {
      somePage(kept);
      const { chooseLook, look, toggleDim } = await looks();
      if (look.value !== 'dim') toggleDim();
      expect(look.value).toBe('dim');
      // Chosen once more, it does not forget what was before.
      chooseLook('dim');
      toggleDim();
      expect(look.value).toBe(before);
    },
  );

  test('is the system’s where something else is remembered, or nothing can be', async () => {
    somePage({ 'rollbook-look': 'purple' });
    expect((await looks()).look.value).toBe('system');
    vi.resetModules();
    const page = somePage('refused');
    const { chooseLook, look } = await looks();
    chooseLook('dark');
    expect([look.value, page.dataset.look]).toEqual(['dark', 'dark']);
  });
});

describe('the hand that holds the phone', () => {
  test.each([
    [{}, 'right'],
    [{ 'rollbook-hand': 'left' }, 'left'],
    [{ 'rollbook-hand': 'third' }, 'right'],
    ['refused', 'right'],
  ] as const)('%j is the %s', async (kept, expected) => {
    somePage(kept);
    expect((await hands()).hand.value).toBe(expected);
  });

  test('is put on the page, and remembered where something can be', async () => {
    const page = somePage({});
    (await hands()).chooseHand('left');
    expect([page.dataset.hand, page.stored.get('rollbook-hand')]).toEqual(['left', 'left']);
    vi.resetModules();
    const refused = somePage('refused');
    (await hands()).chooseHand('left');
    expect(refused.dataset.hand).toBe('left');
  });
});
