import { useState } from 'preact/hooks';
import { addScene } from '../../../app/commands/scenes.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';

/** Adds a scene by its number; the rest is said in its own sheet. */
export function AddScene({ onClose }: { onClose: () => void }) {
  const { newId } = useDay();
  const run = useRun();
  const [number, setNumber] = useState('');
  return (
    <Sheet
      title="Add a scene"
      onClose={onClose}
      foot={
        <Button look="solid" class="cast-add" type="submit" form="add-scene">
          Add
        </Button>
      }
    >
      <form
        id="add-scene"
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          if (run(addScene(number, newId()), `Scene ${number.trim()} added`)) onClose();
        }}
      >
        <TextField label="Scene number" value={number} onInput={setNumber} capitals="characters" />
      </form>
    </Sheet>
  );
}
