import type { Day, PartId } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { CardMatch } from '../../reconcile/pairing/match-recordings.ts';
import { Choice } from '../kit/field.tsx';
import { countOf, listOf } from '../words/chain.ts';

type Owned = CardMatch['owned'][number];

interface OwnersProps {
  readonly day: Day;
  readonly owned: readonly Owned[];
  readonly onOwn: (key: string, recorder: PartId) => void;
}

/** On a day with several recorders: whose each of the cards is, as they fit or as the user says. */
export function CardOwners({ day, owned, onOwn }: OwnersProps) {
  const options = recordersOf(day).map(({ id, name }) => ({ value: id, name }));
  if (options.length < 2) return null;
  return owned.map((cards) => (
    <div key={cards.key} class="section">
      <Choice
        label={cardsWords(cards)}
        value={cards.owner ?? ''}
        options={options}
        onChoose={(recorder) => onOwn(cards.key, recorder)}
      />
    </div>
  ));
}

const MOST_ROLLS = 3;

/** `'6 recordings by CART 32, roll 7A'`: what tells these cards from the others. */
export function cardsWords({ recordings }: Pick<Owned, 'recordings'>): string {
  const originator = recordings[0]?.files[0]?.bext?.originator.trim();
  const rolls = [...new Set(recordings.flatMap(({ tape }) => tape?.trim() || []))];
  const some =
    rolls.length > MOST_ROLLS ? [...rolls.slice(0, MOST_ROLLS), `${rolls.length - MOST_ROLLS} more`] : rolls;
  return [
    countOf(recordings.length, 'recording') + (originator ? ` by ${originator}` : ''),
    ...(some.length > 0 ? [`${rolls.length > 1 ? 'rolls' : 'roll'} ${listOf(some)}`] : []),
  ].join(', ');
}
