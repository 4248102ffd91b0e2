import { useState } from 'preact/hooks';
import { changeHead } from '../../../app/commands/day.ts';
import { loadRoll, setRecorder } from '../../../app/commands/recorders.ts';
import { describePart, strikePart } from '../../../app/commands/rig.ts';
import type { Command } from '../../../app/day-store.ts';
import type { PartId } from '../../../day/model.ts';
import { recordersOf } from '../../../day/recorders/rolling.ts';
import { type Settings, settingsNow } from '../../../day/settings/settings.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { recorderPartsWords } from '../../words/recorders.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { RollField, RollFrom, useRoll } from './roll-field.tsx';
import { FilePattern, SoundSettings, TimecodeRate } from './setting-fields.tsx';

interface RecorderProps {
  readonly recorder: PartId;
  readonly onClose: () => void;
}

/** One recorder: its name all day, and from when it is set to what. */
export function RecorderSheet({ recorder, onClose }: RecorderProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [first] = recordersOf(day);
  const isFirst = recorder === first!.id;
  const known = recordersOf(day).find(({ id }) => id === recorder);
  const [name, setName] = useState(known?.name ?? '');
  const [edited, setEdited] = useState<Partial<Settings>>({});
  const [before, setBefore] = useState<string | undefined>();
  const roll = useRoll(recorder);
  if (!known) return null;

  const held = settingsNow(day, recorder);
  const shown = { ...held, ...edited };
  const changed = Object.fromEntries(
    Object.entries(edited).filter(([field, value]) => value !== held[field as keyof Settings]),
  );
  const isSet = Object.keys(changed).length > 0;
  const isRenamed = name.trim() !== known.name;
  const hasPlace = isSet || (roll.isSaid && !roll.isLateFirst);
  const settings = { shown, onSet: (fields: Partial<Settings>) => setEdited({ ...edited, ...fields }) };

  const save = (): void => {
    const commands: Command[] = [
      ...(isRenamed
        ? [isFirst ? changeHead({ fields: { recorder: name } }) : describePart(recorder, { name })]
        : []),
      ...(isSet ? [setRecorder(changed, { before }, recorder)] : []),
      ...(roll.isSaid
        ? [loadRoll(recorder, roll.name, { before: roll.isLateFirst ? roll.before : before })]
        : []),
    ];
    if (commands.length === 0 || run(commands, `${name.trim()} saved`)) onClose();
  };
  return (
    <Sheet
      title={known.name}
      under={recorderPartsWords(day, recorder)}
      onClose={onClose}
      foot={
        <>
          {hasPlace && <FromWhen before={before} onPlace={setBefore} question="Set so, starting when?" />}
          <div class="buttons">
            <Button look="solid" onClick={save}>
              Save
            </Button>
            {!isFirst && (
              <Button onClick={() => run(strikePart(recorder), `${known.name} deleted`) && onClose()}>
                Delete {known.name}
              </Button>
            )}
          </div>
        </>
      }
    >
      <div class="section">
        <div class="field-pair">
          <TextField label="Name" value={name} onInput={setName} />
          <RollField {...roll} />
        </div>
        <RollFrom {...roll} />
        <TimecodeRate {...settings} />
        <SoundSettings {...settings} />
        <FilePattern {...settings} />
      </div>
    </Sheet>
  );
}
