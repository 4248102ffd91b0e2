import { useEffect, useRef } from 'preact/hooks';

/**
 * Does something when the screen is left by whatever way, and when the phone is put away: what was tapped counts even
 * where nobody tapped Done.
 */
export function useLeaving(leave: () => void): void {
  const latest = useRef(leave);
  latest.current = leave;
  useEffect(() => {
    const hidden = (): void => {
      if (document.visibilityState === 'hidden') latest.current();
    };
    document.addEventListener('visibilitychange', hidden);
    return () => {
      document.removeEventListener('visibilitychange', hidden);
      latest.current();
    };
  }, []);
}
