import { beforeEach, describe, expect, test, vi } from 'vitest';

type CloseOnBack = typeof import('../../../src/ui/kit/back.ts').closeOnBack;

/** A window's history, as far as going back is concerned. */
function someHistory() {
  const entries: { readonly state: unknown; readonly href: string }[] = [
    { state: null, href: '/#/' },
    { state: null, href: '/#/now' },
  ];
  let at = 1;
  let arrived = (): void => {};
  const back = (): void => {
    at -= 1;
    arrived();
  };
  vi.stubGlobal('history', {
    get state() {
      return entries[at]!.state;
    },
    pushState: (state: unknown) => {
      entries.splice(at + 1, entries.length, { state, href: entries[at]!.href });
      at += 1;
    },
    back,
  });
  vi.stubGlobal('location', {
    get href() {
      return entries[at]!.href;
    },
  });
  vi.stubGlobal('addEventListener', (_: string, hear: () => void) => {
    arrived = hear;
  });
  return { back, at: () => at, where: () => entries[at]!.href, length: () => entries.length };
}

describe('the back button', () => {
  let closeOnBack: CloseOnBack;
  beforeEach(async () => {
    vi.resetModules();
    ({ closeOnBack } = await import('../../../src/ui/kit/back.ts'));
  });

  test('closes what was opened last, and stays on the page', () => {
    const { back, where } = someHistory();
    const closed: string[] = [];
    const open = (name: string) => {
      const end = closeOnBack(() => {
        closed.push(name);
        end();
        return false;
      });
    };
    open('sheet');
    open('its note');
    back();
    expect(closed).toEqual(['its note']);
    back();
    expect(closed).toEqual(['its note', 'sheet']);
    expect(where()).toBe('/#/now');
  });

  test('goes to the page before where nothing is open any more, past the entry that is left', () => {
    const { back, where } = someHistory();
    closeOnBack(() => false)();
    back();
    expect(where()).toBe('/#/');
  });

  test('asks again of a sheet that stayed open, as often as it is pressed', () => {
    const { back, where } = someHistory();
    const close = vi.fn(() => true);
    closeOnBack(close);
    for (let press = 0; press < 3; press += 1) back();
    expect(close).toHaveBeenCalledTimes(3);
    expect(where()).toBe('/#/now');
  });

  test('has one entry, however many sheets were opened and closed by their buttons', () => {
    const { length } = someHistory();
    for (let sheet = 0; sheet < 5; sheet += 1) closeOnBack(() => false)();
    expect(length()).toBe(3);
  });
});
