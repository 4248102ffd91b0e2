import type { CastList, PlannedEntry, UnreadLine } from '../../app/commands/cast.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { countOf } from '../words/chain.ts';
import { plannedWord, UNREAD_BECAUSE } from './words.ts';

interface ReadingProps {
  readonly planned: readonly PlannedEntry[];
  readonly list: CastList;
  /** Whether guessed parts and performers are swapped. */
  readonly turned: boolean;
  /** Missing if nothing was guessed. */
  readonly onTurn: ((turned: boolean) => void) | undefined;
}

/** What was read, what was guessed, and what could not be read. */
export function Reading({ planned, list, turned, onTurn }: ReadingProps) {
  const { unread, headings } = list;
  if (planned.length + unread.length + headings.length === 0) return null;
  const guessed = planned.filter(({ entry }) => !entry.sure).length;
  return (
    <>
      <p class="section-title soft" role="status">
        <b>{planned.length}</b> read{guessed > 0 && `, ${guessed} of them guessed`} ·{' '}
        <b class={unread.length > 0 ? 'warn' : ''}>{unread.length}</b> not read
        {headings.length > 0 && ` · ${countOf(headings.length, 'heading')} left out`}
      </p>
      {onTurn && (
        <div class="section-title">
          <Button pressed={turned} onClick={() => onTurn(!turned)}>
            Swap part and name in the guesses
          </Button>
        </div>
      )}
      <UnreadLines unread={unread} />
      <ul class="rows cast-rows" aria-label="Read">
        {planned.map((one) => (
          <li key={one.entry.line}>
            <ReadRow planned={one} />
          </li>
        ))}
      </ul>
    </>
  );
}

function ReadRow({ planned }: { planned: PlannedEntry }) {
  const { number, part, person, sure } = planned.entry;
  return (
    <Row
      number={number}
      title={part || person}
      under={part ? person || 'no performer named' : 'no part named'}
      word={
        <>
          {!sure && <strong>guessed</strong>}
          {planned.twice && <strong>number twice</strong>}
          {plannedWord(planned)}
        </>
      }
    />
  );
}

const SHOWN = 40;

function UnreadLines({ unread }: { unread: readonly UnreadLine[] }) {
  if (unread.length === 0) return null;
  return (
    <ul class="rows cast-rows" aria-label="Not read">
      {unread.slice(0, SHOWN).map(({ line, text, why }) => (
        <li key={line}>
          <Row
            title={text.trim().slice(0, 120)}
            under={`line ${line}`}
            word={
              <>
                <strong>not read</strong>
                {UNREAD_BECAUSE[why]}
              </>
            }
          />
        </li>
      ))}
      {unread.length > SHOWN && (
        <li class="section soft">and {countOf(unread.length - SHOWN, 'more line', 'more lines')}</li>
      )}
    </ul>
  );
}
