import { useState } from 'preact/hooks';
import type { Offer } from '../../app/key-ring.ts';
import { codeToJoin } from '../../app/live/phone-live.ts';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { CodeSheet } from './code-sheet.tsx';

const WAYS: readonly { readonly offer: Offer; readonly title: string; readonly says: string }[] = [
  {
    offer: 'writer',
    title: 'Join to write',
    says: 'For your own second phone and your department. The other phone asks, and you let it in here.',
  },
  {
    offer: 'onlooker',
    title: 'Join to look on',
    says: 'For post and production: it sees everything and changes nothing.',
  },
  {
    offer: 'owner',
    title: 'Hand the day over',
    says: 'The other phone takes the day over once you let it. This phone then reads on and changes nothing.',
  },
];

interface JoinProps {
  readonly day: string;
  readonly isOwner: boolean;
  readonly onClose: () => void;
}

/** The ways for another phone to join the day; only its owner can let one write. */
export function JoinSheet({ day, isOwner, onClose }: JoinProps) {
  const [way, setWay] = useState(isOwner ? undefined : WAYS.find(({ offer }) => offer === 'onlooker'));
  if (way)
    return (
      <CodeSheet
        day={day}
        title={way.title}
        under="On the other phone: Get from another phone, then Scan a join code."
        make={(app, of) => codeToJoin(app, of, way.offer)}
        caution="This code is a key. Whoever photographs it can read this day: names, and all that is added from now on."
        onClose={onClose}
      />
    );
  return (
    <Sheet title="Let a phone join" onClose={onClose} forReaders>
      <ul class="rows">
        {WAYS.map((one) => (
          <li key={one.offer}>
            <Row title={one.title} under={one.says} onTap={() => setWay(one)} />
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
