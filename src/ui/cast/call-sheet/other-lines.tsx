import type { AsideLine, UnreadLine } from '../../../app/commands/call-sheet.ts';
import { Row } from '../../kit/row.tsx';
import { countOf } from '../../words/chain.ts';
import type { Mending } from './mend-form.tsx';
import { ASIDE_AS, UNREAD_BECAUSE } from './words.ts';

const SHOWN = 40;

interface OtherLinesProps {
  readonly name: 'Not read' | 'Set aside';
  readonly lines: readonly (UnreadLine | AsideLine)[];
  readonly onMend: (mending: Mending) => void;
}

/** Lines that are no rows. A tap says of one that it is a performer or a scene after all. */
export function OtherLines({ name, lines, onMend }: OtherLinesProps) {
  if (lines.length === 0) return null;
  return (
    <>
      {name === 'Set aside' && <h3 class="section-title">Set aside</h3>}
      <ul class="rows cast-rows" aria-label={name}>
        {lines.slice(0, SHOWN).map(({ line, text, why }) => (
          <li key={line}>
            <Row
              title={text.trim().slice(0, 120)}
              under={`line ${line}`}
              word={
                why in UNREAD_BECAUSE ? (
                  <NotRead why={why as UnreadLine['why']} />
                ) : (
                  ASIDE_AS[why as AsideLine['why']]
                )
              }
              onTap={() => onMend({ line, text: text.trim() })}
            />
          </li>
        ))}
        {lines.length > SHOWN && (
          <li class="section soft">and {countOf(lines.length - SHOWN, 'more line', 'more lines')}</li>
        )}
      </ul>
    </>
  );
}

const NotRead = ({ why }: Pick<UnreadLine, 'why'>) => (
  <>
    <strong>not read</strong>
    {UNREAD_BECAUSE[why]}
  </>
);
