import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { afterNextPaint, useAfterNextPaint } from './after-next-paint.ts';
import { Button } from './button.tsx';
import { Dialog } from './dialog.tsx';
import { Announced, Messages } from './live.tsx';
import { newestTrouble, notice, raise, sheetsOpen, trouble } from './messages.ts';
import { isReadOnly } from './reads-only.ts';
import { useKeyboard } from './use-keyboard.ts';
import { useTyped } from './use-typed.ts';

interface SheetProps {
  readonly title: ComponentChildren;
  readonly under?: ComponentChildren;
  readonly onClose: () => void;
  readonly foot?: ComponentChildren;
  /** It changes nothing of the day, so a phone that only reads has all of it. */
  readonly forReaders?: boolean;
  readonly children: ComponentChildren;
}

const TYPED = 'What you typed is not saved. Close once more to discard it.';

/**
 * Comes up over the page, near the thumb. The close button closes it. So do the back button, Escape and a tap
 * outside; but if something was typed only at the second try, since those happen by mistake. It waits for the
 * paint that shows its opener pressed; a sheet that replaces another comes at once, or the page would flash
 * in between.
 */
export function Sheet(props: SheetProps) {
  return useAfterNextPaint(sheetsOpen.peek() > 0) ? <OpenSheet {...props} /> : null;
}

function OpenSheet({ title, under, onClose, foot, forReaders = false, children }: SheetProps) {
  const isClosed = isReadOnly.value && !forReaders;
  const heading = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  // What was said of other matters stays out of this sheet.
  const before = useRef({ notice: notice.peek().at, trouble: newestTrouble() }).current;
  const hasTyped = useTyped(dialog);
  useKeyboard(dialog);
  const leave = (): boolean => {
    const stays = hasTyped() && trouble.peek()?.text !== TYPED;
    if (stays) raise(TYPED);
    else onClose();
    return stays;
  };
  useLayoutEffect(() => {
    sheetsOpen.value += 1;
    return () => {
      if (trouble.peek()?.text === TYPED) trouble.value = null;
      // A screen reader only announces page messages once the page is no longer inert.
      afterNextPaint(() => {
        sheetsOpen.value -= 1;
      });
    };
  }, []);
  return (
    <Dialog class="sheet" labelledBy={heading} element={dialog} onLeave={leave}>
      <div class="sheet-messages">
        <Announced silent={notice.value.at === before.notice} />
        <Messages noticesAfter={before.notice} troublesAfter={before.trouble} />
      </div>
      <div class="sheet-inside">
        <div class="sheet-head">
          <div>
            <h2 id={heading}>{title}</h2>
            {under !== undefined && <p class="soft">{under}</p>}
          </div>
          <Button look="bare" onClick={onClose}>
            Close
          </Button>
        </div>
        <div class="sheet-body">
          {isClosed ? (
            <fieldset class="read-only" disabled>
              {children}
            </fieldset>
          ) : (
            children
          )}
        </div>
        {foot !== undefined && !isClosed && <div class="sheet-foot">{foot}</div>}
      </div>
    </Dialog>
  );
}
