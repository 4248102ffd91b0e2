import { useEffect } from 'preact/hooks';

/**
 * Keeps the screen on while `wanted` is true and the page is in view: the platform takes the lock away when the page
 * is hidden, so it is asked for again when it comes back. Where there is no such thing, or it is refused (battery
 * saver), the phone's own time-out holds.
 */
export function useWakeLock(wanted: boolean): void {
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return;
    let lock: WakeLockSentinel | undefined;
    let over = false;
    const hold = async (): Promise<void> => {
      if (document.visibilityState !== 'visible' || (lock && !lock.released)) return;
      try {
        const got = await navigator.wakeLock.request('screen');
        // The take may have been cut while it was asked for.
        if (over) await got.release();
        else lock = got;
      } catch {
        // Refused; asked for again when the page comes back into view.
      }
    };
    const again = (): void => void hold();
    again();
    document.addEventListener('visibilitychange', again);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', again);
      void lock?.release();
    };
  }, [wanted]);
}
