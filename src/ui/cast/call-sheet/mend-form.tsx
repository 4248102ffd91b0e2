import { useState } from 'preact/hooks';
import { readStrip, type SheetPerformer, type SheetScene } from '../../../app/commands/call-sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import type { Mend } from './mended.ts';

/** The row to be mended; a line that was not read has neither performer nor scene. */
export interface Mending {
  readonly line: number;
  readonly text: string;
  readonly performer?: SheetPerformer;
  readonly scene?: SheetScene;
}

const PERFORMER = [
  { cell: 'number', label: 'Cast number', longest: 20 },
  { cell: 'part', label: 'Part, as editors see it', longest: 200 },
  { cell: 'person', label: 'Performer', longest: 200 },
  { cell: 'pickUp', label: 'Pick-up', longest: 40 },
  { cell: 'onSet', label: 'On set', longest: 40 },
] as const;
const SCENE = [
  { cell: 'number', label: 'Scene', longest: 20 },
  { cell: 'intExt', label: 'INT or EXT', longest: 20 },
  { cell: 'set', label: 'Set', longest: 200 },
  { cell: 'dayNight', label: 'Day or night', longest: 40 },
  { cell: 'pages', label: 'Pages', longest: 20 },
  { cell: 'cast', label: 'Cast', longest: 800 },
  { cell: 'crowd', label: 'Background', longest: 200 },
  { cell: 'synopsis', label: 'Synopsis', longest: 4000 },
] as const;

type Texts = Readonly<Record<string, string>>;

function textsOf({ performer, scene, text }: Mending, as: 'performer' | 'scene'): Texts {
  if (as === 'performer')
    return Object.fromEntries(
      PERFORMER.map(({ cell }) => [cell, performer?.[cell] ?? (cell === 'part' ? text : '')]),
    );
  const said = (cell: (typeof SCENE)[number]['cell']): string =>
    scene ? (cell === 'cast' ? scene.cast.join(', ') : scene[cell]) : cell === 'set' ? text : '';
  return Object.fromEntries(SCENE.map(({ cell }) => [cell, said(cell)]));
}

/** What the fields say; null while what it needs is missing. */
function mendOf(as: 'performer' | 'scene', texts: Texts): Mend | null {
  const said = (cell: string): string => (texts[cell] ?? '').trim();
  if (as === 'performer') {
    const [number, part, person, pickUp, onSet] = PERFORMER.map(({ cell }) => said(cell)) as [
      string,
      string,
      string,
      string,
      string,
    ];
    return part + person === '' ? null : { as, entry: { number, part, person, pickUp, onSet } };
  }
  if (said('number') === '') return null;
  const { cast } = readStrip(said('cast'));
  const [number, intExt, set, dayNight, pages] = ['number', 'intExt', 'set', 'dayNight', 'pages'].map(
    said,
  ) as [string, string, string, string, string];
  return {
    as,
    entry: { number, intExt, set, dayNight, pages, cast, crowd: said('crowd'), synopsis: said('synopsis') },
  };
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
        {(as === 'performer' ? PERFORMER : SCENE).map(({ cell, label, longest }) => (
          <TextField
            key={`${as} ${cell}`}
            label={label}
            value={texts[cell] ?? ''}
            onInput={(value) => setTexts({ ...texts, [cell]: value.slice(0, longest) })}
            capitals={cell === 'number' ? 'characters' : 'words'}
          />
        ))}
      </form>
    </Sheet>
  );
}
