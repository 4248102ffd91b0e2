import type { Page } from 'playwright-core';

/** What is wrong with how a place is laid out: one line each, with the element and its text. */
export interface LayoutFaults {
  /** Buttons and links that a thumb in the dark could miss. */
  readonly small: readonly string[];
  /** What lies outside the screen at its sides, the page itself included. */
  readonly outside: readonly string[];
  /** Text that does not fit in its element. */
  readonly clipped: readonly string[];
  /** Figures and words that stand below their row's title, and not beside it. */
  readonly thrownUnder: readonly string[];
}

/** Elements whose text may be wider or higher than they are. */
const MAY_BE_CUT = [
  // For screen readers only, and one pixel on purpose.
  '.unseen',
  // A longer title ends in …, and the sheet that it opens has the whole of it.
  '.head-day strong',
];

/** Measured in the page, for what is on top: the sheet where one is open. */
export const layoutFaults = (page: Page): Promise<LayoutFaults> => page.evaluate(measure, MAY_BE_CUT);

function measure(mayBeCut: readonly string[]): LayoutFaults {
  const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.body;
  const seen = (selector: string): Element[] =>
    [...top.querySelectorAll(selector)].filter((one) => one.checkVisibility({ visibilityProperty: true }));
  const named = (one: Element): string => [one.localName, ...one.classList].join('.');
  const words = (one: Element): string => (one.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 60);
  const overflowX = (one: Element): string => getComputedStyle(one).overflowX;
  const tooWide = (one: Element): number => (one.clientWidth > 0 ? one.scrollWidth - one.clientWidth : 0);

  /** 2.5.8 Target Size (Minimum) asks for 24 CSS px. All are given 48 in height, and frequent ones in width too. */
  const small = (): string[] =>
    seen('button, nav a').flatMap((one) => {
      const { width, height } = one.getBoundingClientRect();
      const isFrequent = one.closest('nav, .head, .dock, .rows') !== null;
      if (height > 47.5 && width > (isFrequent ? 47.5 : 24)) return [];
      return [`${named(one)} is ${width.toFixed(0)} x ${height.toFixed(0)}: ${words(one)}`];
    });

  /** In something that scrolls sideways by itself, such as a line of takes. */
  const isScrolled = (one: Element): boolean => {
    for (let at = one.parentElement; at && at !== document.body; at = at.parentElement)
      if (/auto|scroll/.test(overflowX(at)) && tooWide(at) > 1) return !at.matches('.body, .sheet, dialog');
    return false;
  };

  const outside = (): string[] => {
    const over = tooWide(document.documentElement);
    const lines = seen('*')
      .filter(
        (one) =>
          one.localName === 'input' ||
          [...one.childNodes].some(({ nodeType }) => nodeType === Node.TEXT_NODE),
      )
      .filter((one) => {
        const { left, right, width } = one.getBoundingClientRect();
        return (
          width > 0 && (left < -1 || right > innerWidth + 1) && !one.closest('.unseen') && !isScrolled(one)
        );
      })
      .map((one) => `${named(one)}: ${words(one)}`);
    return over > 0 ? [`the page, by ${over} px`, ...lines] : lines;
  };

  const isTooWide = (one: Element): boolean => tooWide(one) > 1 && !/auto|scroll/.test(overflowX(one));
  const isTooHigh = (one: Element): boolean =>
    one.scrollHeight > one.clientHeight + 1 && getComputedStyle(one).overflowY === 'hidden';
  const clipped = (): string[] =>
    seen('*')
      .filter((one) => !one.closest('svg') && !mayBeCut.some((selector) => one.matches(selector)))
      // What is too wide inside makes what is around it too wide; the innermost says it.
      .filter((one) => (isTooWide(one) && ![...one.children].some(isTooWide)) || isTooHigh(one))
      .map((one) => `${named(one)}: ${words(one)}`);

  const thrownUnder = (): string[] =>
    seen('.row-text').flatMap((text) => {
      const word = text.parentElement?.querySelector(':scope > .row-word, :scope > .kit-section-word');
      if (!word?.textContent) return [];
      const isBeside = word.getBoundingClientRect().top < text.getBoundingClientRect().bottom;
      return isBeside ? [] : [`${word.textContent} is under ${words(text)}`];
    });
  return { small: small(), outside: outside(), clipped: clipped(), thrownUnder: thrownUnder() };
}
