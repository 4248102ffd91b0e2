/** What the back button closes, the uppermost last. */
const closers: (() => void)[] = [];
/** True from our own step back until it has arrived. */
let stepping = false;
let listening = false;

const onMark = (): boolean => (history.state as { sheet?: boolean } | null)?.sheet === true;

/** While anything is open there is one entry of ours on top of the history, with the same address. */
function mark(): void {
  if (closers.length > 0 && !onMark()) history.pushState({ sheet: true }, '');
}

function unmark(): void {
  if (closers.length > 0 || !onMark() || stepping) return;
  stepping = true;
  history.back();
}

function arrived(): void {
  const own = stepping;
  stepping = false;
  if (!own && !onMark()) closers.at(-1)?.();
  // After the screen is drawn anew: another sheet may still be open, or an old entry of ours be left.
  setTimeout(() => (closers.length > 0 ? mark() : unmark()));
}

/**
 * Lets the phone's back button close a sheet instead of leaving the page. Returns what ends it, whoever closed the
 * sheet; the entry in the history goes with the last one.
 */
export function closeOnBack(close: () => void): () => void {
  if (!listening) addEventListener('popstate', arrived);
  listening = true;
  closers.push(close);
  mark();
  return () => {
    closers.splice(closers.indexOf(close), 1);
    // A sheet that gives way to another, or a link out of it, is known only after this.
    setTimeout(unmark);
  };
}
