const KEY = 'rollbook-restarted';

/** Reloads the page, but never twice in a row; false if it did not, or if the guard cannot be stored. */
export function reloadOnce(): boolean {
  try {
    if (sessionStorage.getItem(KEY)) return false;
    sessionStorage.setItem(KEY, 'yes');
  } catch {
    return false;
  }
  location.reload();
  return true;
}

/** The answer to the first call. */
let reloaded: boolean | undefined;

/** True if this page was loaded by `reloadOnce`; asking clears the guard. */
export function wasReloaded(): boolean {
  reloaded ??= liftGuard();
  return reloaded;
}

/** Whether the guard was set; true also if that cannot be told, to prevent a reload loop. */
function liftGuard(): boolean {
  try {
    const was = sessionStorage.getItem(KEY) !== null;
    sessionStorage.removeItem(KEY);
    return was;
  } catch {
    return true;
  }
}
