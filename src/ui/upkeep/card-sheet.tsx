import { useState } from 'preact/hooks';
import { readNumbers } from '../../app/commands/typed.ts';
import { describeCard } from '../../app/commands/upkeep.ts';
import type { CardFields } from '../../day/model.ts';
import { mainNow, recordersOf } from '../../day/recorders/rolling.ts';
import { recorderOfCard } from '../../day/wrap/armed-tracks.ts';
import { SIZE_UNITS, type SizeUnit } from '../../upkeep/due/media.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { figureWords } from './words.ts';

/** A card: its size, what was on it, when it went in and came out, and how many checked copies there are. */
export function CardSheet({ id, onClose }: { id: string | undefined; onClose: () => void }) {
  const store = useDay();
  const { clock } = store;
  const day = store.day.value;
  const run = useRun();
  const known = id === undefined ? undefined : day.upkeep.cards.get(id);
  const inGb = (bytes: number | undefined): string => (bytes ? figureWords(bytes / 1e9, 3) : '');
  const [name, setName] = useState(known?.name ?? '');
  const recorders = recordersOf(day);
  const [recorder, setRecorder] = useState(known ? recorderOfCard(day, known) : mainNow(day));
  const [unit, setUnit] = useState<SizeUnit>('GB');
  const [typed, setTyped] = useState({
    bytes: inGb(known?.bytes),
    usedBytes: inGb(known?.usedBytes),
    tracks: known?.tracks ? String(known.tracks) : '',
  });
  const say = (fields: CardFields, done: string): boolean => {
    const card = id ?? store.newId();
    return run(describeCard(card, fields), done);
  };
  const save = (event: Event): void => {
    event.preventDefault();
    const read = readNumbers(typed);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const { bytes, usedBytes, tracks } = read.value;
    const fields: CardFields = {
      name: name.trim() || 'Card',
      ...(bytes !== null && { bytes: Math.round(bytes * SIZE_UNITS[unit]) }),
      usedBytes: Math.round((usedBytes ?? 0) * SIZE_UNITS[unit]),
      tracks,
      ...(recorders.length > 1 && { recorder }),
      struck: false,
    };
    if (say(known ? fields : { ...fields, inAtMs: null, outAtMs: null }, `${fields.name} edited`)) onClose();
  };
  return (
    <Sheet
      title={known?.name ?? 'A card'}
      under={
        recorders.length > 1
          ? 'What a recorder records counts on every card that is in it.'
          : 'What the day records counts on every card that is in.'
      }
      onClose={onClose}
    >
      <form class="section" onSubmit={save}>
        <TextField label="Name" value={name} onInput={setName} capitals="words" placeholder="Card A" />
        {recorders.length > 1 && (
          <Choice
            label="In which recorder"
            value={recorder}
            options={recorders.map((one) => ({ value: one.id, name: one.name }))}
            onChoose={setRecorder}
          />
        )}
        <div class="field-pair">
          <TextField
            label={`Size, ${unit}`}
            value={typed.bytes}
            onInput={(bytes) => setTyped({ ...typed, bytes })}
            inputMode="decimal"
            placeholder="128"
          />
          <TextField
            label={`Already on it, ${unit}`}
            value={typed.usedBytes}
            onInput={(usedBytes) => setTyped({ ...typed, usedBytes })}
            inputMode="decimal"
            placeholder="0"
          />
        </div>
        <TextField
          label="Tracks armed on it"
          value={typed.tracks}
          onInput={(tracks) => setTyped({ ...typed, tracks })}
          inputMode="numeric"
          placeholder="all of the recorder"
        />
        <Choice
          label="Sizes are in"
          value={unit}
          options={[
            { value: 'GB', name: 'GB, 10⁹' },
            { value: 'GiB', name: 'GiB, 2³⁰' },
          ]}
          onChoose={setUnit}
        />
        <Button look="solid" type="submit">
          Save
        </Button>
      </form>
      {known && (
        <div class="section">
          <Choice
            label="Checked copies on separate devices"
            value={String(known.copies ?? 0)}
            options={['0', '1', '2', '3'].map((value) => ({ value, name: value }))}
            onChoose={(value) => say({ copies: Number(value) }, `${known.name}: ${value} copies`)}
          />
          <div class="buttons">
            <Button
              onClick={() => say({ inAtMs: clock.now().atMs, outAtMs: null }, `${known.name} went in now`)}
            >
              It went in now
            </Button>
            <Button onClick={() => say({ outAtMs: clock.now().atMs }, `${known.name} came out now`)}>
              It came out now
            </Button>
            <Button onClick={() => say({ inAtMs: null, outAtMs: null }, `${known.name} is in all day`)}>
              In all day
            </Button>
            <Button
              onClick={() => {
                if (say({ struck: true }, `${known.name} removed from the list`)) onClose();
              }}
            >
              Remove from list
            </Button>
          </div>
        </div>
      )}
      <Cautions of={['media']} />
    </Sheet>
  );
}
