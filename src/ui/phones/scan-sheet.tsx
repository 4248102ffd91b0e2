import { useRef, useState } from 'preact/hooks';
import type { Offer } from '../../app/key-ring.ts';
import { type Request, readLiveCode } from '../../app/live/phone-live.ts';
import { useApp } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { goTo } from '../frame/route.ts';
import { Button } from '../kit/button.tsx';
import { LongField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { AskSheet, LetInSheet } from './ask-sheet.tsx';
import { CameraView } from './camera-view.tsx';
import { GetSheet } from './get-sheet.tsx';

interface ScanProps {
  readonly day: string | null;
  /** A phone was let in that waits for the day. */
  readonly onLetIn?: (() => void) | undefined;
  readonly onClose: () => void;
}

/** Reads a code by camera, or as text: one that puts a day live, one that joins one, or one that asks to write. */
export function ScanSheet({ day, onLetIn, onClose }: ScanProps) {
  const app = useApp();
  const [typed, setTyped] = useState('');
  const [request, setRequest] = useState<Request | null>(null);
  const [joined, setJoined] = useState<{ readonly day: string; readonly offer: Offer } | null>(null);
  const isBusy = useRef(false);
  const read = async (text: string, isTyped: boolean): Promise<void> => {
    if (isBusy.current) return;
    isBusy.current = true;
    const done = await readLiveCode(app, day, text);
    isBusy.current = false;
    if (!done) {
      if (isTyped) complain({ code: 'live-code' });
      return;
    }
    if (!done.ok) return complain(done.problem);
    const { value } = done;
    if (value.did === 'asked') return setRequest(value.request);
    if (value.did === 'joined' && !value.isLive) return setJoined(value);
    if (value.did === 'joined') goTo({ at: 'day', day: value.day, tab: 'phones' });
    onClose();
    if (value.did === 'live') tell('The day goes live as soon as its server answers');
  };
  if (request) return <LetInSheet request={request} onDone={onLetIn} onClose={onClose} />;
  if (joined) return <Joined {...joined} onClose={onClose} />;
  return (
    <Sheet
      forReaders
      title="Scan a code"
      under="The code of a live server, a join code of another phone’s day, or the code of a phone that asks to write on this one."
      onClose={onClose}
      foot={
        <Button look="solid" onClick={() => void read(typed, true)}>
          Use the pasted code
        </Button>
      }
    >
      <CameraView onCode={(text) => void read(text, false)} />
      <div class="section">
        <LongField label="Or paste it" value={typed} onInput={setTyped} />
      </div>
    </Sheet>
  );
}

/** A day that is not live: this phone asks to write if it was offered that, and then gets the day by codes. */
function Joined({ day, offer, onClose }: { day: string; offer: Offer; onClose: () => void }) {
  const [isGetting, setGetting] = useState(offer === 'onlooker');
  return isGetting ? (
    <GetSheet day={day} onClose={onClose} />
  ) : (
    <AskSheet day={day} onGet={() => setGetting(true)} onClose={onClose} />
  );
}
