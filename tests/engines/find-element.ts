export type Role = 'button' | 'link' | 'field';

/**
 * The first element of a role whose name matches and that a finger would hit now: nothing moves and nothing lies over
 * it. It runs in the page, from its own source, so it uses nothing from outside itself.
 */
export function findElement(role: Role, pattern: string): HTMLElement | null {
  const selector = { button: 'button', link: 'a[href]', field: 'input, textarea' }[role];
  const nameOf = (element: HTMLElement): string => {
    const labels = element instanceof HTMLInputElement ? element.labels : undefined;
    // biome-ignore lint/performance/useDomNodeTextContent: words of two blocks must not run together
    const text = element.getAttribute('aria-label') ?? (labels?.[0] ?? element).innerText;
    return text.replace(/\s+/g, ' ').trim();
  };
  const isStill = (): boolean =>
    document
      .getAnimations()
      .every(
        ({ effect, playState }) =>
          playState !== 'running' || effect?.getComputedTiming().endTime === Number.POSITIVE_INFINITY,
      );
  const isOnTop = (element: HTMLElement): boolean => {
    element.scrollIntoView({ block: 'nearest' });
    const { left, top, width, height } = element.getBoundingClientRect();
    const hit = document.elementFromPoint(left + width / 2, top + height / 2);
    return hit !== null && element.contains(hit);
  };
  const matching = new RegExp(pattern);
  const within: ParentNode = document.querySelector('dialog[open]') ?? document;
  const found = [...within.querySelectorAll<HTMLElement>(selector)].find(
    (element) => !element.matches(':disabled') && element.checkVisibility() && matching.test(nameOf(element)),
  );
  return found && isStill() && isOnTop(found) ? found : null;
}
