import { useState } from 'preact/hooks';
import type { Beside } from '../../../app/commands/rig.ts';
import { Choice } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { RigChoices } from './rig-choices.tsx';

type Receivers = NonNullable<Beside['receivers']>;

interface BesideProps {
  readonly name: string;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** The rig of a second recorder, laid beside the one that is there. */
export function BesideSheet({ name, onClose, onDone }: BesideProps) {
  const [receivers, setReceivers] = useState<Receivers>('own');
  return (
    <Sheet
      title={`A rig for ${name}`}
      under="Packs and receivers that both use stay as they are."
      onClose={onClose}
    >
      <div class="section">
        <Choice
          label="Receivers that come with it"
          value={receivers}
          options={[
            { value: 'own', name: 'Slots and far boxes' },
            { value: 'all', name: 'All' },
          ]}
          onChoose={setReceivers}
        />
      </div>
      <RigChoices beside={{ name, receivers }} onDone={onDone} />
    </Sheet>
  );
}
