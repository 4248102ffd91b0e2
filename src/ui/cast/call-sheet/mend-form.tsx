import { useState } from 'preact/hooks';
import { readStrip, type SheetPerformer, type SheetScene } from '../../../app/commands/call-sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { SCENE_FIELDS, type SceneField } from '../../words/scene-fields.ts';
import type { Mend } from './mended.ts';

/** The row to be mended; a line that was not read has neither performer nor scene. */
export interface Mending {
  readonly line: number;
  readonly text: string;
  readonly performer?: SheetPerformer;
  readonly scene?: SheetScene;
}

interface Field {
  readonly field: string;
  readonly label: string;
  readonly longest: number;
}

const PERFORMER = [
  { field: 'number', label: 'Cast number', longest: 20 },
  { field: 'part', label: 'Part, as editors see it', longest: 200 },
  { field: 'person', label: 'Performer', longest: 200 },
  { field: 'pickUp', label: 'Pick-up', longest: 40 },
  { field: 'onSet', label: 'On set', longest: 40 },
] as const;
const CAST: Field = { field: 'cast', label: 'Cast', longest: 800 };
/** With the cast before the background, as sheets have it. */
const SCENE = SCENE_FIELDS.flatMap<Field>((one) => (one.field === 'crowd' ? [CAST, one] : [one]));

type Texts = Readonly<Record<string, string>>;

function textsOf({ performer, scene, text }: Mending, as: 'performer' | 'scene'): Texts {
  if (as === 'performer')
    return Object.fromEntries(
      PERFORMER.map(({ field }) => [field, performer?.[field] ?? (field === 'part' ? text : '')]),
    );
  if (!scene) return { set: text };
  const fields = SCENE_FIELDS.map(({ field }) => [field, scene[field]]);
  return { ...Object.fromEntries(fields), cast: scene.cast.join(', ') };
}

/** What the fields say; null while what it needs is missing. */
function mendOf(as: 'performer' | 'scene', texts: Texts): Mend | null {
  const said = (field: string): string => (texts[field] ?? '').trim();
  const number = said('number');
  if (as === 'performer') {
    const [part, person] = [said('part'), said('person')];
    const entry = { number, part, person, pickUp: said('pickUp'), onSet: said('onSet') };
    return part + person === '' ? null : { as, entry };
  }
  if (number === '') return null;
  const fields = Object.fromEntries(SCENE_FIELDS.map(({ field }) => [field, said(field)]));
  return { as, entry: { ...(fields as Record<SceneField, string>), cast: readStrip(said('cast')).cast } };
}

const titleOf = ({ scene, performer, line }: Mending): string =>
  scene
    ? `Scene ${scene.number}`
    : performer
      ? performer.part || performer.person
      : `Line ${line} of the sheet`;

interface MendProps {
  readonly mending: Mending;
  readonly onMend: (line: number, mend: Mend) => void;
  readonly onBack: () => void;
}

/** One row of a call sheet, cell by cell. */
export function MendForm({ mending, onMend, onBack }: MendProps) {
  const [as, setAs] = useState<'performer' | 'scene'>(mending.scene ? 'scene' : 'performer');
  const [texts, setTexts] = useState<Texts>(() => textsOf(mending, as));
  const isRow = mending.scene !== undefined || mending.performer !== undefined;
  const mend = mendOf(as, texts);
  const turn = (next: 'performer' | 'scene'): void => {
    setAs(next);
    setTexts(textsOf(mending, next));
  };
  return (
    <Sheet
      title={titleOf(mending)}
      under={mending.text || undefined}
      onClose={onBack}
      foot={
        <div class="buttons">
          {isRow && <Button onClick={() => onMend(mending.line, { as: 'left-out' })}>Leave out</Button>}
          <Button look="solid" disabled={!mend} onClick={() => mend && onMend(mending.line, mend)}>
            Use this
          </Button>
        </div>
      }
    >
      <form
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          if (mend) onMend(mending.line, mend);
        }}
      >
        <Choice
          label="This line is a"
          value={as}
          options={[
            { value: 'performer', name: 'performer' },
            { value: 'scene', name: 'scene' },
          ]}
          onChoose={turn}
        />
        {(as === 'performer' ? (PERFORMER as readonly Field[]) : SCENE).map(({ field, label, longest }) => (
          <TextField
            key={`${as} ${field}`}
            label={label}
            value={texts[field] ?? ''}
            onInput={(value) => setTexts({ ...texts, [field]: value.slice(0, longest) })}
            capitals={field === 'number' ? 'characters' : 'words'}
          />
        ))}
      </form>
    </Sheet>
  );
}
