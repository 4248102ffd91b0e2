const KEY = 'rollbook-restarted';

/** Reloads the page, but never twice in a row; false when it did not, also where the guard cannot be kept. */
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

/** True when this page was loaded by `reloadOnce`; asking lifts the guard. */
export function wasReloaded(): boolean {
  try {
    const reloaded = sessionStorage.getItem(KEY) !== null;
    sessionStorage.removeItem(KEY);
    return reloaded;
  } catch {
    return true;
  }
}
