import { useEffect, useRef, useState } from 'preact/hooks';
import { gettingCodes, haveCode } from '../../app/exchange/getting.ts';
import { useApp } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { useWakeLock } from '../kit/wake-lock.ts';
import { CameraView } from './camera-view.tsx';
import { ShownCode } from './shown-code.tsx';
import './phones.css';

interface GetProps {
  /** Null where no day is open: then whichever the other phone gives. */
  readonly day: string | null;
  readonly onClose: () => void;
  /** Joins a shared day first. */
  readonly onJoin?: () => void;
}

/** Shows the other phone what this one has, then reads what it lacks off the other's screen. */
export function GetSheet({ day, onClose, onJoin }: GetProps) {
  const app = useApp();
  const [code, setCode] = useState<string | null>(null);
  const [isReading, setReading] = useState(false);
  useWakeLock(true);
  useEffect(() => {
    void haveCode(app, day).then(setCode);
  }, [app, day]);
  if (isReading) return <Reading day={day} onClose={onClose} />;
  return (
    <Sheet
      forReaders
      title="Get from another phone"
      under="On the other phone open the day, then Phones, then Give to another phone. Hold this code in front of its camera."
      onClose={onClose}
      foot={
        <>
          {onJoin && <Button onClick={onJoin}>Scan a join code</Button>}
          <Button look="solid" onClick={() => setReading(true)}>
            It shows codes now
          </Button>
        </>
      }
    >
      {code !== null && <ShownCode text={code} label="Code that says what this phone has" />}
      <p class="section soft">The code says which entries this phone has, and nothing of what they say.</p>
    </Sheet>
  );
}

function Reading({ day, onClose }: GetProps) {
  const getting = useRef(gettingCodes()).current;
  const [progress, setProgress] = useState({ read: 0, count: 0 });
  const isDone = useRef(false);
  const take = (text: string): void => {
    const now = getting.take(text);
    if (now) setProgress(now);
    if (!getting.isWhole || isDone.current) return;
    isDone.current = true;
    void getting.finish(day).then((finished) => {
      if (finished.ok) return;
      complain(finished.problem);
      onClose();
    });
  };
  const { read, count } = progress;
  return (
    <Sheet
      forReaders
      title="Get from another phone"
      under="Point the camera at the codes on the other phone. What is read changes nothing before you have seen it."
      onClose={onClose}
    >
      <CameraView onCode={take} />
      <p class="section" role="status">
        {count === 0
          ? 'No code read yet'
          : read < count
            ? `${read} of ${count} codes read`
            : 'Everything read'}
      </p>
    </Sheet>
  );
}
