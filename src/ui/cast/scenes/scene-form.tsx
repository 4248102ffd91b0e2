import { useState } from 'preact/hooks';
import { describeScene } from '../../../app/commands/scenes.ts';
import type { Scene } from '../../../day/scene.ts';
import { useRun } from '../../frame/context.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';

const FIELDS = [
  { field: 'number', label: 'Scene number', longest: 20 },
  { field: 'intExt', label: 'INT or EXT', longest: 20 },
  { field: 'set', label: 'Set', longest: 200 },
  { field: 'dayNight', label: 'Day or night', longest: 40 },
  { field: 'pages', label: 'Pages', longest: 20 },
  { field: 'crowd', label: 'Background', longest: 200 },
  { field: 'synopsis', label: 'Synopsis', longest: 4000 },
] as const;
type Field = (typeof FIELDS)[number]['field'];

/** What the sheet says of a scene, to be put right by hand. */
export function SceneForm({ scene, onDone }: { scene: Scene; onDone: () => void }) {
  const run = useRun();
  const [texts, setTexts] = useState<Readonly<Partial<Record<Field, string>>>>({});
  return (
    <form
      class="section"
      onSubmit={(event) => {
        event.preventDefault();
        if (run(describeScene(scene.id, texts), `Scene ${scene.number} edited`)) onDone();
      }}
    >
      {FIELDS.map(({ field, label, longest }) => (
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
