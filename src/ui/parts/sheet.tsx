import type { ComponentChildren } from 'preact';
import { useEffect, useId, useLayoutEffect, useRef } from 'preact/hooks';
import { sheetsOpen, trouble } from '../saying.ts';
import { closeOnBack } from './back.ts';
import { Trouble } from './live.tsx';
import { useKeyboard } from './use-keyboard.ts';
import { useTyped } from './use-typed.ts';

interface SheetProps {
  readonly title: ComponentChildren;
  readonly under?: ComponentChildren;
  readonly onClose: () => void;
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
}

const TYPED = 'What you typed here is not kept yet. Once more leaves it behind.';

/** What gets the focus back from a sheet that is on its way out; another sheet that takes its place gives it back later. */
let returning: Element | null = null;

/**
 * A dialog that leaves the page is closed by that. Closing it before would have the browser compute the whole page
 * twice, once with it and once without.
 */
function giveBackFocus(opener: Element | null): void {
  returning = opener;
  queueMicrotask(() => {
    if (returning !== opener) return;
    returning = null;
    if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
  });
}

/**
 * Comes up over the page at the thumb: a modal dialog of the platform, which keeps focus inside and gives it back to
 * what opened it. The close button closes it. The phone's back button, Escape and a tap beside it do so too, but where
 * something was typed only at the second time: those are the ways to leave by mistake.
 */
export function Sheet({ title, under, onClose, foot, children }: SheetProps) {
  const heading = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const hasTyped = useTyped(dialog);
  useKeyboard(dialog);
  const leave = useRef<() => boolean>(() => false);
  // Says whether the sheet stays.
  leave.current = () => {
    const stays = hasTyped() && trouble.peek() !== TYPED;
    if (stays) trouble.value = TYPED;
    else onClose();
    return stays;
  };

  useLayoutEffect(() => closeOnBack(() => leave.current()), []);

  // Not after the next paint: by then a quick hand has moved the focus on, and giving it back would take it away.
  useLayoutEffect(() => {
    const opener = returning ?? document.activeElement;
    returning = null;
    dialog.current?.showModal();
    sheetsOpen.value += 1;
    return () => {
      sheetsOpen.value -= 1;
      if (trouble.peek() === TYPED) trouble.value = null;
      giveBackFocus(opener);
    };
  }, []);

  useEffect(() => {
    const shown = dialog.current;
    const beside = (event: MouseEvent): void => {
      if (event.target === shown) leave.current();
    };
    shown?.addEventListener('click', beside);
    return () => shown?.removeEventListener('click', beside);
  }, []);

  return (
    <dialog
      class="sheet"
      aria-labelledby={heading}
      ref={dialog}
      onCancel={(event) => {
        event.preventDefault();
        leave.current();
      }}
    >
      <div class="sheet-inside">
        <div class="sheet-head">
          <div>
            <h2 id={heading}>{title}</h2>
            {under !== undefined && <p class="soft">{under}</p>}
          </div>
          <button type="button" onClick={onClose}>
            Close
          </button>
        </div>
        <div class="sheet-body">{children}</div>
        <div class="sheet-foot">
          <Trouble />
          {foot}
        </div>
      </div>
    </dialog>
  );
}
