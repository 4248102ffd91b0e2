import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import { useApp } from '../frame/context.ts';
import { Sheet } from '../kit/sheet.tsx';
import { useWakeLock } from '../kit/wake-lock.ts';
import { ShownCode } from './shown-code.tsx';

interface CodeProps {
  readonly day: string;
  readonly title: string;
  readonly under: string;
  /** Makes the code, once. */
  readonly make: (app: AppStore, day: string) => Promise<string>;
  /** What the code gives away. */
  readonly caution: string;
  readonly children?: ComponentChildren;
  readonly foot?: ComponentChildren;
  readonly onClose: () => void;
}

/** A code for another phone's camera, with its text for where there is none. */
export function CodeSheet({ day, title, under, make, caution, children, foot, onClose }: CodeProps) {
  const app = useApp();
  const first = useRef(make).current;
  const [code, setCode] = useState<string | null>(null);
  useWakeLock(true);
  useEffect(() => {
    void first(app, day).then(setCode);
  }, [app, day, first]);
  return (
    <Sheet title={title} under={under} onClose={onClose} foot={foot} forReaders>
      {children}
      <div class={children ? 'code-under-words' : undefined}>
        {code !== null && <ShownCode text={code} label={`Code: ${title}`} />}
      </div>
      <p class="section">{caution}</p>
      {code !== null && (
        <details class="section soft">
          <summary>The code as text</summary>
          <p class="live-code">{code}</p>
        </details>
      )}
    </Sheet>
  );
}
