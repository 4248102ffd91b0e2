import { signal } from '@preact/signals';

export type Hand = 'right' | 'left';

const KEY = 'rollbook-hand';

function remembered(): Hand {
  try {
    return localStorage.getItem(KEY) === 'left' ? 'left' : 'right';
  } catch {
    // Storage refused: default to the right hand.
    return 'right';
  }
}

/** The hand that holds the phone: Roll and Close are on its thumb's side. */
export const hand = signal<Hand>(remembered());

export function chooseHand(next: Hand): void {
  hand.value = next;
  document.documentElement.dataset.hand = next;
  try {
    localStorage.setItem(KEY, next);
  } catch {
    // Storage refused: it holds for this window only.
  }
}
