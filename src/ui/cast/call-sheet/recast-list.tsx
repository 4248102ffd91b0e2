import type { Recast } from '../../../app/commands/call-sheet.ts';
import { Choice } from '../../kit/field.tsx';
import { asOnWords } from '../../words/known-days.ts';
import type { Answered } from './recast.ts';

interface RecastProps {
  readonly recast: readonly Recast[];
  readonly answered: Answered;
  readonly onAnswer: (answered: Answered) => void;
}

/** Parts that the sheet has with another performer than before: who plays each is asked, never guessed. */
export function RecastList({ recast, answered, onAnswer }: RecastProps) {
  if (recast.length === 0) return null;
  return (
    <section class="section" aria-label="Another performer">
      {recast.map(({ entry, known }) => (
        <Choice
          key={entry.line}
          label={`Who plays ${known.part || known.person} today?`}
          value={answered.get(entry.line) ?? ''}
          options={[
            { value: 'sheet', name: `${entry.person}, as on the sheet` },
            { value: 'cast', name: `${known.person}, ${known.date ? asOnWords(known.date) : 'as before'}` },
          ]}
          onChoose={(who) => onAnswer(new Map([...answered, [entry.line, who]]))}
        />
      ))}
    </section>
  );
}
