import type { ComponentChildren, RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { closeOnBack } from './back.ts';

interface DialogProps {
  readonly class: string;
  readonly labelledBy: string;
  readonly element: RefObject<HTMLDialogElement | null>;
  /** Called when Escape, the back button or a tap outside asks to close it. Returns true to stay open. */
  readonly onLeave: () => boolean;
  readonly children: ComponentChildren;
}

/** The platform's modal dialog, open while rendered: makes the page inert and returns the focus. */
export function Dialog({ class: className, labelledBy, element, onLeave, children }: DialogProps) {
  const leave = useRef(onLeave);
  leave.current = onLeave;
  useLayoutEffect(() => {
    const dialog = element.current!;
    const endBack = closeOnBack(() => leave.current());
    dialog.oncancel = (event) => {
      // Cancelling a file picker inside also fires `cancel`.
      if (event.target !== dialog) return;
      event.preventDefault();
      leave.current();
    };
    // Browsers may close it without asking at the second Escape.
    dialog.onclose = () => {
      if (leave.current()) dialog.showModal();
    };
    // Its content fills it, so a tap on the dialog element itself is outside the content.
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
