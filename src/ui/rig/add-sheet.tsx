import { useState } from 'preact/hooks';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { AddInputs, AddPacks, AddSelectors, AddSend, AddTracks } from './add-parts.tsx';
import { AddReceiver } from './add-receiver.tsx';

const THINGS = [
  { id: 'receiver', name: 'Receiver', word: 'modules, channels, outputs', Form: AddReceiver },
  { id: 'packs', name: 'Packs', word: 'a row of packs', Form: AddPacks },
  { id: 'selectors', name: 'Bank of selectors', word: 'before a run of inputs', Form: AddSelectors },
  { id: 'inputs', name: 'Inputs', word: 'mic, line, AES3, slots', Form: AddInputs },
  { id: 'tracks', name: 'Tracks', word: 'iso, numbered on', Form: AddTracks },
  { id: 'send', name: 'Send', word: 'comms, playback, timecode', Form: AddSend },
] as const;

/** Chooses what to add to the rig, then shows its form. */
export function AddSheet({ onClose }: { onClose: () => void }) {
  const [what, setWhat] = useState<string | null>(null);
  const thing = THINGS.find(({ id }) => id === what);
  return (
    <Sheet
      title={thing ? `Add: ${thing.name.toLowerCase()}` : 'Add to the rig'}
      under={thing?.word}
      onClose={onClose}
    >
      {thing ? (
        <div class="section">
          <thing.Form onDone={onClose} />
        </div>
      ) : (
        <ul class="rows">
          {THINGS.map(({ id, name, word }) => (
            <li key={id}>
              <Row title={name} word={word} onTap={() => setWhat(id)} />
            </li>
          ))}
        </ul>
      )}
    </Sheet>
  );
}
