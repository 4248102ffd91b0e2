import { describeTake } from '../../commands/log-takes.ts';
import { saidOfLink, sayAgain } from '../../commands/say-again.ts';
import { type Conflict, conflictsOf } from '../../day/conflicts.ts';
import type { Fact } from '../../day/model.ts';
import { slateText, takeText } from '../../day/slate.ts';
import { nextNumber } from '../../day/takes.ts';
import { databaseOf, type FactId } from '../../shared/ids.ts';
import { useApp, useDay, useRun } from '../context.ts';
import { Row } from '../parts/row.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { factWords } from '../words/facts.ts';
import { clockTime } from '../words/times.ts';

/** What cannot both be true, with the alternatives; one tap on the true one settles it. */
export function ConflictSheet({ onClose }: { onClose: () => void }) {
  const conflicts = conflictsOf(useDay().day.value);
  return (
    <Sheet
      title={countOf(conflicts.length, 'contradiction')}
      under={
        conflicts.length > 0
          ? 'Said on phones that did not know of each other. Tap what is true.'
          : 'Everything is settled.'
      }
      onClose={onClose}
    >
      {conflicts.map((conflict) =>
        conflict.kind === 'said-twice' ? (
          <SaidTwice key={conflict.link} conflict={conflict} />
        ) : (
          <TakeTwice key={conflict.takes.map(({ id }) => id).join()} conflict={conflict} />
        ),
      )}
    </Sheet>
  );
}

/** When it was said, and on which phone. */
function useWhence(): (id: FactId, standing: boolean) => string {
  const day = useDay().day.value;
  const { database } = useApp().parts.journal.state;
  return (id, standing) => {
    const fact = day.facts.find((one) => one.id === id);
    const when = fact ? `${clockTime(fact.at, fact.zone)}, ` : '';
    const phone = databaseOf(id) === database ? 'this phone' : 'another phone';
    return `${when}${phone}${standing ? ', holds until settled' : ''}`;
  };
}

function SaidTwice({ conflict }: { conflict: Extract<Conflict, { kind: 'said-twice' }> }) {
  const day = useDay().day.value;
  const run = useRun();
  const whence = useWhence();
  const facts = conflict.by.flatMap((id) => day.facts.find((fact: Fact) => fact.id === id) ?? []);
  return (
    <ul class="rows">
      {facts.map((fact, at) => {
        const words = factWords(day, { ...fact, ...saidOfLink(fact, conflict.link) } as Fact);
        return (
          <li key={fact.id}>
            <Row
              mark="clash"
              title={words}
              under={whence(fact.id, at === 0)}
              word="this is true"
              onTap={() => run((now) => sayAgain(now, fact.id, conflict.link), `Settled: ${words}`)}
            />
          </li>
        );
      })}
    </ul>
  );
}

function TakeTwice({ conflict }: { conflict: Extract<Conflict, { kind: 'take-twice' }> }) {
  const day = useDay().day.value;
  const run = useRun();
  const whence = useWhence();
  return (
    <ul class="rows">
      {conflict.takes.map((take) => {
        const number = nextNumber(day, take.kind, take.slate);
        const name = takeText({ ...take, number });
        return (
          <li key={take.id}>
            <Row
              mark="clash"
              title={`${takeText(take)}, slate ${slateText(take.slate)}`}
              under={whence(take.id, false)}
              word={`make it ${name}`}
              onTap={() => run((now) => describeTake(now, take.id, { number }), `Now ${name}`)}
            />
          </li>
        );
      })}
    </ul>
  );
}
