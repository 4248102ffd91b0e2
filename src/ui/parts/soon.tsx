import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** What is further down than the eye looks first comes with the picture after the first, which does not wait for it. */
export function Soon({ children }: { children: ComponentChildren }): ComponentChildren {
  const [shown, setShown] = useState(false);
  useEffect(() => setShown(true), []);
  return shown ? children : null;
}
