import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Row } from '../../kit/row.tsx';
import './sheets.css';

export interface Offered {
  readonly id: string;
  readonly name: string;
  readonly under?: string;
  readonly word: string;
  readonly isFoundBy: (typed: string) => boolean;
}

interface OfferListProps {
  /** Above the list. */
  readonly title: string;
  /** What a screen reader calls the list. */
  readonly label: string;
  /** Best first. */
  readonly offers: readonly Offered[];
  readonly onTap: (id: string) => void;
}

/** More than these cannot be seen at once. */
const FEW = 8;

/** Who or what to choose, best first. A long list can be searched. */
export function OfferList({ title, label, offers, onTap }: OfferListProps) {
  const [typed, setTyped] = useState('');
  const [finding, setFinding] = useState(false);
  const found = offers.filter((offer) => typed.trim() === '' || offer.isFoundBy(typed));
  return (
    <section class="offers" data-finding={finding}>
      <div class="offers-head">
        <h3 class="soft">{title}</h3>
        {offers.length > FEW && !finding && (
          <Button look="plain" onClick={() => setFinding(true)}>
            Find
          </Button>
        )}
      </div>
      {finding && <Find typed={typed} onInput={setTyped} none={found.length === 0} />}
      <ul class="rows" aria-label={label}>
        {found.map(({ id, name, under, word }) => (
          <li key={id}>
            <Row title={name} under={under} word={word} onTap={() => onTap(id)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface FindProps {
  readonly typed: string;
  readonly onInput: (typed: string) => void;
  readonly none: boolean;
}

function Find({ typed, onInput, none }: FindProps) {
  const around = useRef<HTMLDivElement>(null);
  useEffect(() => {
    around.current?.querySelector('input')?.focus({ preventScroll: true });
    around.current?.scrollIntoView({ block: 'start' });
  }, []);
  return (
    <div class="offers-find" role="search" ref={around}>
      <TextField label="Find" type="search" value={typed} onInput={onInput} />
      <p class="soft" role="status">
        {none ? 'None by that name.' : ''}
      </p>
    </div>
  );
}
