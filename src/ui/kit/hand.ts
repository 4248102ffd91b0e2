import { signal } from '@preact/signals';

export type Hand = 'right' | 'left';

const KEY = 'rollbook-hand';

function remembered(): Hand {
  try {
    return localStorage.getItem(KEY) === 'left' ? 'left' : 'right';
  } catch {
    // A browser that keeps nothing is held in the right hand.
    return 'right';
  }
}

/** The hand that holds the phone: Roll and Close are on its thumb's side. The first script puts it on the page. */
export const hand = signal<Hand>(remembered());

export function chooseHand(next: Hand): void {
  hand.value = next;
  document.documentElement.dataset.hand = next;
  try {
    localStorage.setItem(KEY, next);
  } catch {
    // Not remembered: it holds for this window.
  }
}
