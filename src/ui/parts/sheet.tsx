import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { behindPicture } from '../behind-picture.ts';
import { closeOnBack } from './back.ts';
import { coverPage, focusInPlace } from './cover.ts';
import { Trouble } from './live.tsx';
import { sheetsOpen, trouble } from './messages.ts';
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

/** In a microtask, so that a sheet which takes the place of this one comes first, and finds one open. */
function givePlace(opener: Element | null): void {
  returning = opener;
  queueMicrotask(() => {
    sheetsOpen.value -= 1;
    if (returning !== opener) return;
    returning = null;
    if (opener instanceof HTMLElement && opener.isConnected) focusInPlace(opener);
  });
}

/**
 * Comes up over the page at the thumb: a dialog that keeps the focus inside and gives it back to what opened it. The
 * close button closes it. The phone's back button, Escape and a tap beside it do so too, but where something was typed
 * only at the second time: those are the ways to leave by mistake. It comes behind the picture that shows its opener
 * pressed; one that takes the place of another comes at once, or the page would be seen between them.
 */
export function Sheet(props: SheetProps) {
  const [isDue, setDue] = useState(() => sheetsOpen.peek() > 0);
  useLayoutEffect(() => behindPicture(() => setDue(true)), []);
  return isDue ? <OpenSheet {...props} /> : null;
}

function OpenSheet({ title, under, onClose, foot, children }: SheetProps) {
  const heading = useId();
  const ground = useRef<HTMLDivElement>(null);
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
    const uncover = coverPage(ground.current!, () => leave.current());
    sheetsOpen.value += 1;
    return () => {
      if (trouble.peek() === TYPED) trouble.value = null;
      uncover();
      givePlace(opener);
    };
  }, []);

  return (
    <div class="sheet-ground" popover="manual" ref={ground}>
      <dialog class="sheet" open aria-modal="true" aria-labelledby={heading} ref={dialog}>
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
    </div>
  );
}
