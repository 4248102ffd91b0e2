import type { ComponentChildren, RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { closeOnBack } from './back.ts';

interface DialogProps {
  readonly class: string;
  /** The id of its heading. */
  readonly labelledBy: string;
  readonly element: RefObject<HTMLDialogElement | null>;
  /** Escape, the back button or a tap beside it asks to close it. Returns true where it stays. */
  readonly onLeave: () => boolean;
  readonly children: ComponentChildren;
}

/**
 * The platform's modal dialog, open as long as it is drawn: it keeps the page out of reach, and gives the focus back to
 * what had it before.
 */
export function Dialog({ class: className, labelledBy, element, onLeave, children }: DialogProps) {
  const leave = useRef(onLeave);
  leave.current = onLeave;
  useLayoutEffect(() => {
    const dialog = element.current!;
    const endBack = closeOnBack(() => leave.current());
    dialog.oncancel = (event) => {
      // A choice of files that is called off tells so too.
      if (event.target !== dialog) return;
      event.preventDefault();
      leave.current();
    };
    // A browser may close it without asking, at the second Escape.
    dialog.onclose = () => {
      if (leave.current()) dialog.showModal();
    };
    // What is inside fills it, so a tap on the dialog itself is one beside it.
    dialog.onclick = ({ target }) => {
      if (target === dialog) leave.current();
    };
    dialog.showModal();
    return () => {
      endBack();
      dialog.onclose = null;
      dialog.close();
    };
  }, []);
  return (
    <dialog class={className} aria-labelledby={labelledBy} ref={element}>
      {children}
    </dialog>
  );
}
