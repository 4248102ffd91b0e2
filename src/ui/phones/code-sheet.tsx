import { useEffect, useState } from 'preact/hooks';
import { codeToAsk, codeToJoin } from '../../app/live/phone-live.ts';
import { useApp, useDay } from '../frame/context.ts';
import { Sheet } from '../kit/sheet.tsx';
import { useWakeLock } from '../kit/wake-lock.ts';
import { ShownCode } from './shown-code.tsx';

const WORDS = {
  join: {
    title: 'Join this day',
    under: 'On the other phone: Phones, or Get from another phone, then Scan a live code.',
    make: codeToJoin,
    caution:
      'The code is a key. Whoever photographs it can read this day: names, and all that is added from now on.',
  },
  ask: {
    title: 'Ask to write',
    under:
      'The owner of the day scans this under Phones. Until then this phone reads the day and shares nothing.',
    make: codeToAsk,
    caution: 'The code says who holds this phone and names its key. It lets nobody read anything.',
  },
} as const;

/** A code for another phone's camera, with its text for where there is none. */
export function CodeSheet({ what, onClose }: { what: keyof typeof WORDS; onClose: () => void }) {
  const app = useApp();
  const { id } = useDay().day.value;
  const { title, under, make, caution } = WORDS[what];
  const [code, setCode] = useState<string | null>(null);
  useWakeLock(true);
  useEffect(() => {
    void make(app, id).then(setCode);
  }, [app, id, make]);
  return (
    <Sheet title={title} under={under} onClose={onClose}>
      {code !== null && <ShownCode text={code} label={`Code: ${title}`} />}
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
