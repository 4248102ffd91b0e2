import { signal } from '@preact/signals';

export const LOOKS = ['system', 'light', 'sunlight', 'dark', 'dim'] as const;
export type Look = (typeof LOOKS)[number];

const KEY = 'rollbook-look';
/** The look to return to from the dark-set look. */
const KEY_BEFORE = 'rollbook-look-before-dim';

const isLook = (text: string | null): text is Look => LOOKS.some((look) => look === text);

function remembered(key: string): Look {
  try {
    const stored = localStorage.getItem(key);
    return isLook(stored) ? stored : 'system';
  } catch {
    // Storage refused: follow the system.
    return 'system';
  }
}

function remember(key: string, value: Look): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // Storage refused: it holds for this window only.
  }
}

export const look = signal<Look>(remembered(KEY));
let beforeDim: Look = remembered(KEY_BEFORE);

/**
 * The colour the browser paints around the page: it must not glow on a dark set either. Matches `--paper` in
 * tokens.css.
 */
const AROUND: Partial<Record<Look, string>> = {
  light: '#f3f0e8',
  sunlight: '#fff',
  dark: '#0d0d0e',
  dim: '#000',
};

function paintAround(next: Look): void {
  const found = document.querySelector<HTMLMetaElement>('meta[name="theme-color"]:not([media])');
  const colour = AROUND[next];
  if (!colour) {
    found?.remove();
    return;
  }
  const meta = found ?? document.createElement('meta');
  meta.name = 'theme-color';
  meta.content = colour;
  document.head.prepend(meta);
}

/** Applies a look and remembers it on this phone. */
export function chooseLook(next: Look): void {
  if (next === 'dim' && look.peek() !== 'dim') {
    beforeDim = look.peek();
    remember(KEY_BEFORE, beforeDim);
  }
  look.value = next;
  if (next === 'system') delete document.documentElement.dataset.look;
  else document.documentElement.dataset.look = next;
  paintAround(next);
  remember(KEY, next);
}

/** Dims for a dark set, or goes back to the look before. */
export function toggleDim(): void {
  chooseLook(look.peek() !== 'dim' ? 'dim' : beforeDim === 'dim' ? 'system' : beforeDim);
}
