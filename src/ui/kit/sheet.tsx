import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { afterNextPaint, useAfterNextPaint } from './after-next-paint.ts';
import { Button } from './button.tsx';
import { Dialog } from './dialog.tsx';
import { Notice, Trouble } from './live.tsx';
import { notice, sheetsOpen, trouble } from './messages.ts';
import { useKeyboard } from './use-keyboard.ts';
import { useTyped } from './use-typed.ts';

interface SheetProps {
  readonly title: ComponentChildren;
  readonly under?: ComponentChildren;
  readonly onClose: () => void;
  readonly foot?: ComponentChildren;
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

function OpenSheet({ title, under, onClose, foot, children }: SheetProps) {
  const heading = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const noticeBefore = useRef(notice.peek().at);
  const hasTyped = useTyped(dialog);
  useKeyboard(dialog);
  const leave = (): boolean => {
    const stays = hasTyped() && trouble.peek() !== TYPED;
    if (stays) trouble.value = TYPED;
    else onClose();
    return stays;
  };
  useLayoutEffect(() => {
    sheetsOpen.value += 1;
    return () => {
      if (trouble.peek() === TYPED) trouble.value = null;
      // A screen reader only announces page messages once the page is no longer inert.
      afterNextPaint(() => {
        sheetsOpen.value -= 1;
      });
    };
  }, []);
  return (
    <Dialog class="sheet" labelledBy={heading} element={dialog} onLeave={leave}>
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
        <div class="sheet-body">{children}</div>
        <div class="sheet-foot">
          <Trouble />
          {foot}
        </div>
        <div class="live">
          <Notice silent={notice.value.at === noticeBefore.current} />
        </div>
      </div>
    </Dialog>
  );
}
