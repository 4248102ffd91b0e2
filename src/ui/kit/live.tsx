import { useEffect } from 'preact/hooks';
import { Button } from './button.tsx';
import { notice, sheetsOpen, trouble } from './messages.ts';

const SHOWN_MS = 4000;

/**
 * The page's two live regions: what was done, politely; what could not be done, assertively and until
 * dismissed. An open sheet makes the page inert, so it contains both itself.
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

export function Notice({ silent = false }: { silent?: boolean }) {
  const text = silent ? '' : notice.value.text;
  return (
    <p role="status" class={text ? 'live-notice' : 'unseen'}>
      {text}
    </p>
  );
}

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
