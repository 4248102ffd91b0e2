import { useRef, useState } from 'preact/hooks';
import { type Request, readLiveCode } from '../../app/live/phone-live.ts';
import { useApp } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { goTo } from '../frame/route.ts';
import { Button } from '../kit/button.tsx';
import { LongField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { LetInSheet } from './ask-sheet.tsx';
import { CameraView } from './camera-view.tsx';

/** Reads a code by camera, or as text: one that puts a day live, one that joins one, or one that asks to write. */
export function ScanSheet({ day, onClose }: { day: string | null; onClose: () => void }) {
  const app = useApp();
  const [typed, setTyped] = useState('');
  const [request, setRequest] = useState<Request | null>(null);
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
    if (value.did === 'joined') goTo({ at: 'day', day: value.day, tab: 'phones' });
    onClose();
    if (value.did === 'live') tell('The day goes live as soon as its server answers');
  };
  if (request) return <LetInSheet request={request} onClose={onClose} />;
  return (
    <Sheet
      forReaders
      title="Scan a live code"
      under="The code of a live server, of another phone's live day, or of a phone that wants to write on this day."
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
