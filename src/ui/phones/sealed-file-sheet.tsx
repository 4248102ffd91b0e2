import { useEffect, useState } from 'preact/hooks';
import { sealedFile } from '../../app/sealed/sealed-giving.ts';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { useApp, useDay } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { device } from '../frame/sending/device.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';

const SEND_WORD = {
  share: 'Share the sealed file',
  download: 'Download the sealed file',
  copy: 'Copy the sealed file',
} as const;

/** It says nothing of the production either. */
const NAME = 'sealed day.txt';

/** A shared day for phones that have joined, to go through hands that may not read it. */
export function SealedFileSheet({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const { id } = useDay().day.value;
  const [file, setFile] = useState<OutgoingFile | null>(null);
  useEffect(() => {
    void sealedFile(app, id).then((made) => {
      if (made?.ok) setFile({ name: NAME, type: 'text/plain', content: made.value });
      else if (made) complain(made.problem);
    });
  }, [app, id]);
  const route = file ? routeFor(device, [file]) : 'download';
  const send = async (): Promise<void> => {
    if (!file) return;
    const result = await sendFiles(device, route, [file], 'Sealed day');
    if (!result.ok) return complain(result.problem);
    if (!result.value.sent) return;
    onClose();
    tell('Sealed file sent');
  };
  return (
    <Sheet
      forReaders
      title="Sealed file"
      under="Only phones that have joined this day can read it: whoever carries it learns nothing."
      onClose={onClose}
      foot={
        <Button look="solid" disabled={!file} onClick={() => void send()}>
          {SEND_WORD[route]}
        </Button>
      }
    >
      <p class="section soft">
        The other phone imports it like a day file, and checks who entered what. It is no backup: the day file
        is, as readable text.
      </p>
    </Sheet>
  );
}
