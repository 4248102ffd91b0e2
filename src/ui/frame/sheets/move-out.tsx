import { moveToTrack } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { wayOutOfClash } from '../../../day/answers/free-track.ts';
import type { PartId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { nameOf } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';

interface MoveProps {
  readonly track: PartId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Ends a clash by a track of its own for who came last; nothing if no track is free. */
export function MoveOut({ track, before, onDone }: MoveProps) {
  const day = useDay().day.value;
  const run = useRun();
  const way = wayOutOfClash(answersBefore(day, before), track);
  if (!way) return null;
  const name = nameOf(day, way.mover.voice);
  const move = (): void => {
    const done = `${name} on track ${way.to.name}`;
    if (run(moveToTrack(way.mover.input, track, way.to.id, { before }), done)) onDone();
  };
  return (
    <Button class="wide" onClick={move}>
      Move {name} to free track {way.to.name}
    </Button>
  );
}
