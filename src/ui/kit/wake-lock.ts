import { useEffect } from 'preact/hooks';

/**
 * Keeps the screen on while `wanted` is true and the page is visible. The platform drops the lock when the
 * page is hidden, so it is requested again on return. If it is unsupported or refused (battery saver), the
 * phone's own time-out applies.
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
        // The take may have been cut during the request.
        if (over) await got.release();
        else lock = got;
      } catch {
        // Refused; requested again when the page becomes visible.
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
