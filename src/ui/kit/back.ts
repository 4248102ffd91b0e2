/** What the back button closes, the uppermost last. */
const closers: (() => boolean)[] = [];

const here = () => ({
  ours: (history.state as { sheet?: boolean } | null)?.sheet === true,
  href: location.href,
});
let stood = { ours: false, href: '' };
let listening = false;

/** Puts an entry of ours on top of the history, with the same address; one that was left there serves again. */
function mark(): void {
  if (!here().ours) history.pushState({ sheet: true }, '');
  stood = here();
}

function arrived(): void {
  const before = stood;
  stood = here();
  const fromOurs = before.ours && !stood.ours && before.href === stood.href;
  if (!fromOurs) return;
  const close = closers.at(-1);
  // Nothing is open: the step was meant for the page, and our entry was only in its way.
  if (!close) history.back();
  else if (close()) mark();
}

/**
 * Lets the phone's back button close a sheet instead of leaving the page. Returns what ends it, whoever closed the
 * sheet. The entry in the history stays for the next sheet: taking it out would be a step that a reload or a tap on a
 * link could cross. `close` says true where the sheet stays: what was typed in it is kept.
 */
export function closeOnBack(close: () => boolean): () => void {
  if (!listening) addEventListener('popstate', arrived);
  listening = true;
  closers.push(close);
  mark();
  return () => {
    closers.splice(closers.indexOf(close), 1);
    if (closers.length > 0) mark();
  };
}
