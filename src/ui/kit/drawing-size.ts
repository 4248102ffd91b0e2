import { useEffect, useRef, useState } from 'preact/hooks';

interface DrawingSize {
  readonly widthPx: number;
  /** The size of the page's text, 16 px unless the person asked for larger. */
  readonly remPx: number;
}

/** The size of the page's text now, in px. */
export const remPx = (): number =>
  Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;

/**
 * What a drawing is laid out by: the width of its frame and the size of text, 0 wide until both are known. It
 * changes as the phone turns and as text is made larger, which does not change the width by itself.
 */
export function useDrawingSize() {
  const frame = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<DrawingSize>({ widthPx: 0, remPx: 16 });
  useEffect(() => {
    const shown = frame.current;
    if (!shown) return;
    const measure = (): void => {
      const now = { widthPx: Math.floor(shown.clientWidth), remPx: remPx() };
      setSize((last) => (last.widthPx === now.widthPx && last.remPx === now.remPx ? last : now));
    };
    measure();
    const rem = asWideAsText();
    const watch = new ResizeObserver(measure);
    watch.observe(shown);
    watch.observe(rem);
    return () => {
      watch.disconnect();
      rem.remove();
    };
  }, []);
  return { frame, size };
}

/** Nothing tells that text was made larger, but an element that is as wide as its letters are high. */
function asWideAsText(): HTMLElement {
  const rem = document.createElement('div');
  rem.classList.add('rem-wide');
  document.body.append(rem);
  return rem;
}
