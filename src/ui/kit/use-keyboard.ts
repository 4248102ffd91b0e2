import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/**
 * Keeps the foot of the screen above the keyboard. Browsers that follow `interactive-widget` in index.html
 * shrink the page themselves, and this does nothing; Safari only reports a smaller visual viewport.
 */
export function useKeyboard(lifted: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const seen = window.visualViewport;
    if (!seen) return;
    const lift = (): void => {
      // Pinch-zooming shrinks the viewport too, with nothing covering it.
      const covered = seen.scale > 1.01 ? 0 : Math.max(0, innerHeight - seen.height - seen.offsetTop);
      lifted.current?.style.setProperty('--keyboard', `${Math.round(covered)}px`);
      if (covered > 0) document.activeElement?.scrollIntoView({ block: 'nearest' });
    };
    lift();
    seen.addEventListener('resize', lift);
    seen.addEventListener('scroll', lift);
    return () => {
      seen.removeEventListener('resize', lift);
      seen.removeEventListener('scroll', lift);
    };
  }, [lifted]);
}
