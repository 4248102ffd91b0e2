import { useEffect } from 'preact/hooks';
import { said, sheetsOpen, trouble } from './messages.ts';

const SHOWN_MS = 4000;

/** The two live regions: what was done, politely; what could not be done, at once and until it is closed. */
export function Live() {
  const { text, at } = said.value;
  useEffect(() => {
    if (!text) return;
    const timer = setTimeout(() => {
      said.value = { text: '', at };
    }, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [text, at]);
  return (
    <div class="live">
      <p role="status" class={text ? 'live-said' : 'unseen'}>
        {text}
      </p>
      {sheetsOpen.value === 0 && <Trouble />}
    </div>
  );
}

/** What could not be done. A sheet shows it too, since it covers the page. */
export function Trouble() {
  return (
    <div role="alert">
      {trouble.value && (
        <p class="live-trouble">
          <span>{trouble.value}</span>
          <button
            type="button"
            onClick={() => {
              trouble.value = null;
            }}
          >
            Close
          </button>
        </p>
      )}
    </div>
  );
}
