import { useEffect } from 'preact/hooks';
import { Button } from './button.tsx';
import { notice, sheetsOpen, trouble } from './messages.ts';

const SHOWN_MS = 4000;

/**
 * The two live regions of the page: what was done, politely; what could not be done, at once and until it is closed. While
 * a sheet is open nothing is heard from the page, and the sheet has both.
 */
export function Live() {
  const { text, at } = notice.value;
  useEffect(() => {
    if (!text) return;
    const timer = setTimeout(() => {
      notice.value = { text: '', at };
    }, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [text, at]);
  return (
    <div class="live">
      <Notice silent={sheetsOpen.value > 0} />
      {sheetsOpen.value === 0 && <Trouble />}
    </div>
  );
}

/** What was done. */
export function Notice({ silent = false }: { silent?: boolean }) {
  const text = silent ? '' : notice.value.text;
  return (
    <p role="status" class={text ? 'live-notice' : 'unseen'}>
      {text}
    </p>
  );
}

/** What could not be done. */
export function Trouble() {
  return (
    <div role="alert">
      {trouble.value && (
        <p class="live-trouble">
          <span>{trouble.value}</span>
          <Button
            look="bare"
            onClick={() => {
              trouble.value = null;
            }}
          >
            Close
          </Button>
        </p>
      )}
    </div>
  );
}
