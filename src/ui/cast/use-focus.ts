import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** Focuses an element when it first appears, if wanted. */
export function useFocus<T extends HTMLElement>(wanted: boolean): RefObject<T | null> {
  const element = useRef<T>(null);
  const first = useRef(wanted);
  useEffect(() => {
    if (first.current) element.current?.focus({ preventScroll: true });
  }, []);
  return element;
}
