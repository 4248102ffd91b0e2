import { signal } from '@preact/signals';

export const LOOKS = ['system', 'light', 'sunlight', 'dark', 'dim'] as const;
export type Look = (typeof LOOKS)[number];

const KEY = 'rollbook-look';

const isLook = (text: string | null): text is Look => LOOKS.some((look) => look === text);

function remembered(): Look {
  try {
    const stored = localStorage.getItem(KEY);
    return isLook(stored) ? stored : 'system';
  } catch {
    // A browser that keeps nothing still shows something.
    return 'system';
  }
}

export const look = signal<Look>(remembered());

/** Puts the look on the page, and remembers it on this phone. */
export function chooseLook(next: Look): void {
  look.value = next;
  if (next === 'system') delete document.documentElement.dataset.look;
  else document.documentElement.dataset.look = next;
  try {
    localStorage.setItem(KEY, next);
  } catch {
    // Not remembered: it holds for this window.
  }
}
