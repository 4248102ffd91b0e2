import type { ComponentChildren } from 'preact';
import { decideOrder, joinTakes, resolveConflict, sayFieldAgain } from '../../../app/commands/correct.ts';
import { describeTake } from '../../../app/commands/takes.ts';
import { type Conflict, conflictsOf } from '../../../day/phones/conflicts.ts';
import { canBeOneTake } from '../../../day/phones/one-take.ts';
import { takeText } from '../../../day/slate.ts';
import { nextNumber } from '../../../day/takes.ts';
import { databaseOf, type FactId } from '../../../shared/ids.ts';
import { Row } from '../../kit/row.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { countOf } from '../../words/chain.ts';
import {
  changeWords,
  conflictTitle,
  fieldWords,
  nameOfTake,
  saidWords,
  timesOfTake,
} from '../../words/conflicts.ts';
import { phoneName } from '../../words/phones.ts';
import { clockTime } from '../../words/times.ts';
import { useApp, useDay, useRun } from '../context.ts';

type Of<Kind extends Conflict['kind']> = { readonly conflict: Extract<Conflict, { kind: Kind }> };

/** What cannot both be true, or could have happened in either order; a tap on the true one resolves it. */
export function ConflictSheet({ onClose }: { onClose: () => void }) {
  const conflicts = conflictsOf(useDay().day.value);
  return (
    <Sheet
      title={countOf(conflicts.length, 'conflict')}
      under={
        conflicts.length > 0
          ? 'Two phones say different things. Tap what is true; every take it touches is put right.'
          : 'No conflicts left.'
      }
      onClose={onClose}
    >
      {conflicts.map((conflict) => (
        <OneConflict key={keyOf(conflict)} conflict={conflict} />
      ))}
    </Sheet>
  );
}

function keyOf(conflict: Conflict): string {
  if (conflict.kind === 'take-twice') return conflict.takes.map(({ id }) => id).join();
  if (conflict.kind === 'order-unsure') return `${conflict.change} ${conflict.take}`;
  return conflict.by.join() + (conflict.kind === 'link-conflict' ? conflict.link : conflict.field);
}

function OneConflict({ conflict }: { conflict: Conflict }) {
  switch (conflict.kind) {
    case 'link-conflict':
      return <LinkConflict conflict={conflict} />;
    case 'field-conflict':
      return <FieldConflict conflict={conflict} />;
    case 'take-twice':
      return <TakeTwice conflict={conflict} />;
    case 'order-unsure':
      return <OrderUnsure conflict={conflict} />;
  }
}

function Titled({ conflict, children }: { conflict: Conflict; children: ComponentChildren }) {
  const day = useDay().day.value;
  return (
    <>
      <h3 class="section-title soft">{conflictTitle(day, conflict)}</h3>
      <ul class="rows">{children}</ul>
    </>
  );
}

/** When it was entered, and on which phone. */
function useWhence(): (id: FactId, holds?: boolean) => string {
  const day = useDay().day.value;
  const { database } = useApp().parts.journal.state;
  return (id, holds = false) => {
    const fact = day.facts.find((one) => one.id === id);
    const when = fact ? `${clockTime(fact.at, fact.zone)}, ` : '';
    const phone = phoneName(day, databaseOf(id), database);
    return `${when}${phone}${holds ? ', used until resolved' : ''}`;
  };
}

interface TrueRowsProps {
  /** The value that holds until this is resolved, then the others. */
  readonly by: readonly FactId[];
  readonly wordsOf: (id: FactId) => string;
  readonly onTrue: (id: FactId, words: string) => void;
}

function TrueRows({ by, wordsOf, onTrue }: TrueRowsProps) {
  const whence = useWhence();
  return by.map((id, at) => {
    const words = wordsOf(id);
    return (
      <li key={id}>
        <Row
          mark="clash"
          title={words}
          under={whence(id, at === 0)}
          word="this is true"
          onTap={() => onTrue(id, words)}
        />
      </li>
    );
  });
}

function LinkConflict({ conflict }: Of<'link-conflict'>) {
  const day = useDay().day.value;
  const run = useRun();
  const { link, by } = conflict;
  const decide = (stands: FactId | null, done: string): void => {
    run(resolveConflict(link, by, stands), done);
  };
  return (
    <Titled conflict={conflict}>
      <TrueRows
        by={by}
        wordsOf={(id) => saidWords(day, id, link)}
        onTrue={(id, words) => decide(id, `Resolved: ${words}`)}
      />
      <li>
        <Row
          title="Both happened"
          under={`first ${saidWords(day, by.at(-1)!, link)}, then ${saidWords(day, by[0]!, link)}`}
          word="as it is now"
          onTap={() => decide(null, 'Resolved: both, one after the other')}
        />
      </li>
    </Titled>
  );
}

function FieldConflict({ conflict }: Of<'field-conflict'>) {
  const day = useDay().day.value;
  const run = useRun();
  return (
    <Titled conflict={conflict}>
      <TrueRows
        by={conflict.by}
        wordsOf={(id) => fieldWords(day, id, conflict)}
        onTrue={(id, words) => run(sayFieldAgain(id, conflict), `Resolved: ${words}`)}
      />
    </Titled>
  );
}

function TakeTwice({ conflict }: Of<'take-twice'>) {
  const day = useDay().day.value;
  const run = useRun();
  const whence = useWhence();
  const { takes } = conflict;
  const name = takeText(takes[0]!);
  const pairs = takes.flatMap((other, at) => {
    const into = takes.slice(0, at).find((earlier) => canBeOneTake(day, earlier, other));
    return into ? [{ into, other }] : [];
  });
  return (
    <Titled conflict={conflict}>
      {pairs.map(({ into, other }) => (
        <li key={`one ${other.id}`}>
          <Row
            title={
              takes.length > 2 ? `One take: ${whence(into.id)}; ${whence(other.id)}` : 'This is one take'
            }
            under="they start together; notes and marks of both are kept"
            word={`one ${name}`}
            onTap={() => run(joinTakes(other.id, into.id), `One take: ${name}`)}
          />
        </li>
      ))}
      {takes.map((take) => {
        const number = nextNumber(day, take.kind, take.slate);
        const next = takeText({ ...take, number });
        return (
          <li key={take.id}>
            <Row
              mark="clash"
              title={`${name}, ${timesOfTake(day, take.id) || 'no times'}`}
              under={whence(take.id)}
              word={`make it ${next}`}
              onTap={() => run(describeTake(take.id, { number }), `Now ${next}`)}
            />
          </li>
        );
      })}
    </Titled>
  );
}

function OrderUnsure({ conflict }: Of<'order-unsure'>) {
  const day = useDay().day.value;
  const run = useRun();
  const whence = useWhence();
  const { change, take, isBefore } = conflict;
  const name = nameOfTake(day, take);
  return (
    <Titled conflict={conflict}>
      {([true, false] as const).map((before) => (
        <li key={String(before)}>
          <Row
            title={before ? `before ${name}` : `after ${name}`}
            under={`${changeWords(day, change)}: ${whence(change)}${before === isBefore ? ', as it is now' : ''}`}
            word="this is true"
            onTap={() => run(decideOrder(change, take, before), before ? `Before ${name}` : `After ${name}`)}
          />
        </li>
      ))}
    </Titled>
  );
}
