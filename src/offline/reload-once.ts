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

/** What was found when it was asked first. */
let reloaded: boolean | undefined;

/** True when this page was loaded by `reloadOnce`; asking lifts the guard. */
export function wasReloaded(): boolean {
  reloaded ??= liftGuard();
  return reloaded;
}

/** Whether there was one; true also where nobody can tell, so that nothing goes round in a circle. */
function liftGuard(): boolean {
  try {
    const was = sessionStorage.getItem(KEY) !== null;
    sessionStorage.removeItem(KEY);
    return was;
  } catch {
    return true;
  }
}
