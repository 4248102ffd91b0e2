import { useState } from 'preact/hooks';
import type { Fact } from '../../day/model.ts';
import type { Problem, Result } from '../../shared/result.ts';
import { useDay } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { undoneWords } from '../words/actions.ts';
import { sentenceFor } from '../words/problems.ts';

/** Undo and redo for this phone's actions. Asks first if another phone's facts depend on one. */
export function UndoButtons() {
  const store = useDay();
  const [asking, setAsking] = useState<Problem | null>(null);
  const say = (word: string, result: Result<readonly Fact[]>): void => {
    setAsking(null);
    if (result.ok) tell(`${word}: ${undoneWords(store.day.peek(), result.value)}`);
    else if (result.problem.code === 'undo-built-on') setAsking(result.problem);
    else complain(result.problem);
  };
  if (asking) {
    return (
      <div role="group" aria-label="Undo" class="section">
        <p>{sentenceFor(asking)}</p>
        <Button onClick={() => say('Undone', store.undo({ evenIfBuiltOn: true }))}>Undo it anyway</Button>
        <Button onClick={() => setAsking(null)}>Keep it</Button>
      </div>
    );
  }
  return (
    <>
      <Button disabled={!store.canUndo.value} onClick={() => say('Undone', store.undo())}>
        Undo
      </Button>
      <Button disabled={!store.canRedo.value} onClick={() => say('Redone', store.redo())}>
        Redo
      </Button>
    </>
  );
}
