import { useDay } from '../frame/context.ts';
import { redoLast, undoLast } from '../frame/undo.ts';
import { Button } from '../kit/button.tsx';

/** Undo and redo for this phone's actions. */
export function UndoButtons() {
  const store = useDay();
  return (
    <>
      <Button disabled={!store.canUndo.value} onClick={() => undoLast(store)}>
        Undo
      </Button>
      <Button disabled={!store.canRedo.value} onClick={() => redoLast(store)}>
        Redo
      </Button>
    </>
  );
}
