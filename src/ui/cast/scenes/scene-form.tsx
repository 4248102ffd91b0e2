import { useState } from 'preact/hooks';
import { describeScene } from '../../../app/commands/scenes.ts';
import type { Scene } from '../../../day/scene.ts';
import { useRun } from '../../frame/context.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { SCENE_FIELDS, type SceneField } from '../../words/scene-fields.ts';

/** What the sheet says of a scene, to be put right by hand. */
export function SceneForm({ scene, onDone }: { scene: Scene; onDone: () => void }) {
  const run = useRun();
  const [texts, setTexts] = useState<Readonly<Partial<Record<SceneField, string>>>>({});
  return (
    <form
      class="section"
      onSubmit={(event) => {
        event.preventDefault();
        if (run(describeScene(scene.id, texts), `Scene ${scene.number} edited`)) onDone();
      }}
    >
      {SCENE_FIELDS.map(({ field, label, longest }) => (
        <TextField
          key={field}
          label={label}
          value={texts[field] ?? scene[field]}
          onInput={(value) => setTexts({ ...texts, [field]: value.slice(0, longest) })}
          capitals={field === 'number' ? 'characters' : 'sentences'}
        />
      ))}
      <Button type="submit" look="solid">
        Save
      </Button>
    </form>
  );
}
