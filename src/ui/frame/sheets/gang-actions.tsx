import { useMemo } from 'preact/hooks';
import { declareGang, dissolveGang } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { clashesWithoutGang, stretchOf } from '../../../day/answers/gang-reach.ts';
import type { TrackAnswer } from '../../../day/answers/track-answers.ts';
import { gangsOn } from '../../../day/chain/gang-links.ts';
import { Button } from '../../kit/button.tsx';
import { useDay, useRun } from '../context.ts';
import { endEffects, type GangChoice, gangChoices, gangEffects } from './gang-words.ts';
import './sheets.css';

interface GangProps {
  readonly answer: TrackAnswer;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Declares a clash intended, while it lasts or from here on, with the effect on other takes. */
export function GangClash({ answer, before, onDone }: GangProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { id } = answer.track;
  const found = useMemo(() => before && stretchOf(day, id, before), [day, id, before]);
  // None if another window has undone the take and all that came after it.
  const stretch = found && found.takes.length > 0 ? found : undefined;
  const declare = ({ onwards, done }: GangChoice): void => {
    if (run(declareGang(id, { before, onwards }), done)) onDone();
  };
  return (
    <>
      {gangChoices(stretch).map((choice, at) => (
        <Button
          key={choice.ask}
          look={at === 0 ? 'solid' : 'outline'}
          class="wide"
          onClick={() => declare(choice)}
        >
          {choice.ask}
        </Button>
      ))}
      {stretch && <p class="soft action-effects">{gangEffects(stretch)}</p>}
    </>
  );
}

/** Ends the gangs of a track, listing the takes that would clash without them. */
export function EndGang({ answer, before, onDone }: GangProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { id } = answer.track;
  const from = before === undefined ? undefined : day.takes.get(before);
  const effects = useMemo(() => {
    if (from) return endEffects(from, clashesWithoutGang(day, id, from.id));
    return answer.state === 'gang'
      ? 'Whoever shares the track clashes from here on.'
      : 'Ends it from here on.';
  }, [day, id, from, answer]);
  if (gangsOn(answersBefore(day, before).links, id).length === 0) return null;
  return (
    <>
      <Button class="wide" onClick={() => run(dissolveGang(id, { before }), 'Gang ended') && onDone()}>
        End the gang
      </Button>
      <p class="soft action-effects">{effects}</p>
    </>
  );
}
