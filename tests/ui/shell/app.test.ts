import { signal } from '@preact/signals';
import { h } from 'preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { AppStore } from '../../../src/app/app-store.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { ok } from '../../../src/shared/result.ts';
import { route } from '../../../src/ui/frame/route.ts';
import { Boundary } from '../../../src/ui/kit/boundary.tsx';
import { notice } from '../../../src/ui/kit/messages.ts';
import { App } from '../../../src/ui/shell/app.tsx';
import { ScreenMissing } from '../../../src/ui/shell/screen-missing.tsx';
import { show } from '../small-dom.ts';

const ADDRESS = { at: 'day', day: 'day-1', tab: 'cast' } as const;

interface Of {
  readonly erased?: boolean;
  readonly open?: AppStore['open'];
}

/** An app whose day of the address has no entries, with as much of it as the shell asks for. */
function appOf({ erased = false, open }: Of) {
  const store = {
    day: signal(foldDay('day-1', [])),
    erased: signal(erased),
    readsOnly: signal(null),
    damaged: signal(0),
  };
  const opened = async () => store;
  return {
    current: () => undefined,
    open: open ?? opened,
    parts: {},
    unsaved: { countOf: () => 0 },
  } as unknown as AppStore;
}

async function shownAt(app: AppStore): Promise<string> {
  route.value = ADDRESS;
  const { root, settled, gone } = show(h(App, { app, restart: async () => ok('restarting') }));
  await vi.waitFor(async () => {
    await settled();
    expect(root.all('main')[0]?.attributes.get('aria-busy')).toBeUndefined();
    expect(root.textContent).not.toBe('');
  });
  const text = root.textContent;
  gone();
  return text;
}

describe('the address of a day', () => {
  beforeEach(() => {
    vi.stubGlobal('window', {});
    vi.stubGlobal('navigator', {});
    vi.stubGlobal('scrollTo', () => {});
  });
  afterEach(() => vi.unstubAllGlobals());

  test('that this phone does not have says so, and starts none', async () => {
    expect(await shownAt(appOf({}))).toContain('No such day on this phone');
  });

  test('that could not be read says why', async () => {
    const open = () => Promise.reject(new Error('the disk does not answer'));
    expect(await shownAt(appOf({ open }))).toContain('the disk does not answer');
  });

  test('that another window erased says so, and leads to the days', async () => {
    expect(await shownAt(appOf({ erased: true }))).toBe('Erased in another window. All days');
  });
});

describe('leaving a day', () => {
  beforeEach(() => {
    vi.stubGlobal('window', {});
    vi.stubGlobal('navigator', {});
    vi.stubGlobal('scrollTo', () => {});
  });
  afterEach(() => vi.unstubAllGlobals());

  test('takes the message that offers to undo on it along, and no other', async () => {
    const offer = { label: 'Undo', onTap: () => {} };
    notice.value = { text: '12A/3 cut', at: 1, actions: [offer] };
    await shownAt(appOf({}));
    expect(notice.value).toEqual({ text: '', at: 1 });
    notice.value = { text: 'Day 4 erased', at: 2 };
    await shownAt(appOf({}));
    expect(notice.value.text).toBe('Day 4 erased');
  });
});

test('a screen that breaks says what broke it, and that nothing is lost', async () => {
  const Broken = (): never => {
    throw new Error('no track of that number');
  };
  const { root, settled } = show(h(Boundary, null, h(Broken, null)));
  await settled();
  expect(root.textContent).toContain('no track of that number');
  expect(root.textContent).toContain('Nothing saved is lost');
  expect(show(h(Boundary, null, 'fine')).root.textContent).toBe('fine');
});

test('in place of a screen that could not be loaded there are two ways out', () => {
  const back = vi.fn();
  vi.stubGlobal('history', { back });
  const { root } = show(h(ScreenMissing, null));
  root.all('button')[0]!.tap();
  expect(back).toHaveBeenCalledOnce();
  expect(root.all('a')[0]!.attributes.get('href')).toBe('#/');
});
