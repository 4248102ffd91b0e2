// What a modal dialog of the platform does for a sheet, done without `inert`: that is a style of every element, so a
// browser computes the whole page anew when such a dialog opens and once more when it closes. Where the page is a long
// line and the phone a slow one, this is half of the time between the tap and the sheet.

const FOCUSABLE =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]';

/** Those that are open, the uppermost last. */
const grounds: HTMLElement[] = [];

/**
 * Lays the ground of a sheet over everything, hides the page around it from screen readers, and keeps the focus inside.
 * A tap on the ground itself and Escape ask to `leave`. Returns what undoes it; what is in the ground goes with it.
 */
export function coverPage(ground: HTMLElement, leave: () => void): () => void {
  // Where there are no popovers yet, its style alone lays it over the page.
  ground.showPopover?.();
  const hidden = besidePath(ground);
  for (const one of hidden) one.setAttribute('aria-hidden', 'true');
  ground.addEventListener('click', ({ target }) => {
    if (target === ground) leave();
  });
  // Wherever the focus is: what had it may have gone with what was done.
  const byKey = (event: KeyboardEvent): void => {
    if (grounds.at(-1) !== ground) return;
    if (event.key === 'Tab') keepInside(ground, event);
    if (event.key !== 'Escape') return;
    event.preventDefault();
    leave();
  };
  // The order of the browser may lead out past a group of choices, which has one stop only.
  const onFocus = ({ target }: FocusEvent): void => {
    if (grounds.at(-1) === ground && !ground.contains(target as Node)) focusFirst(ground);
  };
  grounds.push(ground);
  addEventListener('keydown', byKey);
  addEventListener('focusin', onFocus);
  focusFirst(ground);
  return () => {
    removeEventListener('keydown', byKey);
    removeEventListener('focusin', onFocus);
    grounds.splice(grounds.indexOf(ground), 1);
    for (const one of hidden) one.removeAttribute('aria-hidden');
  };
}

/** What is focused is in sight already: looking for it would have the browser lay out the page before its time. */
export const focusInPlace = (element: HTMLElement | null): void => element?.focus({ preventScroll: true });

const focusFirst = (ground: HTMLElement): void => focusInPlace(ground.querySelector<HTMLElement>(FOCUSABLE));

/** All of the page that does not lead to the ground; what is said beside the page goes on being said. */
function besidePath(ground: Element): Element[] {
  const beside: Element[] = [];
  for (let at = ground; !at.matches('.page, body'); at = at.parentElement!) {
    for (const one of at.parentElement!.children)
      if (one !== at && !one.hasAttribute('aria-hidden')) beside.push(one);
  }
  return beside;
}

/** After the last thing to focus comes the first, and before that one the last. */
function keepInside(ground: HTMLElement, event: KeyboardEvent): void {
  const all = [...ground.querySelectorAll<HTMLElement>(FOCUSABLE)].filter(
    (one) => one.getClientRects().length > 0,
  );
  const [edge, other] = event.shiftKey ? [all[0], all.at(-1)] : [all.at(-1), all[0]];
  const { activeElement } = document;
  if (activeElement !== edge && ground.contains(activeElement)) return;
  event.preventDefault();
  other?.focus();
}
