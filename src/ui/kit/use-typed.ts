import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

const FIELDS = 'input:not([type="search"], [type="file"]), textarea';

/** Whether a field inside now differs from when it was first touched. */
export function useTyped(around: RefObject<HTMLElement | null>): () => boolean {
  const first = useRef(new Map<HTMLInputElement | HTMLTextAreaElement, string>());
  useLayoutEffect(() => {
    const inside = around.current;
    const note = ({ target }: Event): void => {
      const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
      if (isField && target.matches(FIELDS) && !first.current.has(target))
        first.current.set(target, target.value);
    };
    inside?.addEventListener('focusin', note);
    return () => inside?.removeEventListener('focusin', note);
  }, [around]);
  return () =>
    [...first.current].some(
      ([field, value]) => field.isConnected && field.value.trim() !== '' && field.value !== value,
    );
}
