import type { ComponentChildren } from 'preact';
import { useEffect, useId, useLayoutEffect, useRef } from 'preact/hooks';
import { sheetsOpen } from '../saying.ts';
import { closeOnBack } from './back.ts';
import { Trouble } from './live.tsx';

interface SheetProps {
  readonly title: ComponentChildren;
  readonly under?: ComponentChildren;
  readonly onClose: () => void;
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
}

/**
 * Comes up over the page at the thumb: a modal dialog of the platform, which keeps focus inside and gives it back to
 * what opened it. Escape, the close button, a tap beside it and the phone's back button close it.
 */
export function Sheet({ title, under, onClose, foot, children }: SheetProps) {
  const heading = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const latest = useRef(onClose);
  latest.current = onClose;

  useLayoutEffect(() => closeOnBack(() => latest.current()), []);

  useEffect(() => {
    const opener = document.activeElement;
    const shown = dialog.current;
    shown?.showModal();
    sheetsOpen.value += 1;
    return () => {
      sheetsOpen.value -= 1;
      shown?.close();
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);

  useEffect(() => {
    const shown = dialog.current;
    const beside = (event: MouseEvent): void => {
      if (event.target === shown) onClose();
    };
    shown?.addEventListener('click', beside);
    return () => shown?.removeEventListener('click', beside);
  }, [onClose]);

  return (
    <dialog
      class="sheet"
      aria-labelledby={heading}
      ref={dialog}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
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
