/** What the back button closes, the topmost last. */
const closers: (() => boolean)[] = [];

const here = () => ({
  ours: (history.state as { sheet?: boolean } | null)?.sheet === true,
  href: location.href,
});
let stood = { ours: false, href: '' };
let listening = false;

/** Pushes a history entry with the same address, or reuses one left behind. */
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
  // Nothing is open, so the step was meant for the page and our entry was in the way.
  if (!close) history.back();
  else if (close()) mark();
}

/**
 * Makes the phone's back button close a sheet instead of leaving the page. Returns a function to call when
 * the sheet is closed in any way. The history entry stays for the next sheet: removing it is a step that
 * could collide with a reload or a link. `close` returns true if the sheet stays open because something was
 * typed in it.
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
