import { useState } from 'preact/hooks';
import { addReceiver, type ReceiverSpec } from '../../app/commands/rig.ts';
import { OUTPUT_KINDS, type OutputKind } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { openSection } from '../kit/section.tsx';
import { OUTPUT_KIND_WORD } from '../words/connectors.ts';
import type { AddProps } from './add-parts.tsx';
import { PLACE_OPTIONS } from './receiver-sheet.tsx';

interface TypedModule {
  readonly name: string;
  readonly channels: string;
  readonly outputs: OutputKind;
}

interface Typed {
  readonly name: string;
  readonly place: ReceiverSpec['place'];
  readonly modules: readonly TypedModule[];
}

const BLANK: TypedModule = { name: '', channels: '4', outputs: 'analogue' };

/** A receiver with its modules: how many channels each has, and what they leave by. */
export function AddReceiver({ onDone }: AddProps) {
  const store = useDay();
  const run = useRun();
  const [typed, setTyped] = useState<Typed>({ name: '', place: 'cart', modules: [BLANK] });
  const setModule = (at: number, fields: Partial<TypedModule>): void => {
    const modules = typed.modules.map((module, place) => (place === at ? { ...module, ...fields } : module));
    setTyped({ ...typed, modules });
  };
  const add = (event: Event): void => {
    event.preventDefault();
    const modules = typed.modules.map(({ name, channels, outputs }) => ({
      name,
      channels: Number(channels),
      outputs,
    }));
    const spec = { name: typed.name, place: typed.place, modules };
    if (!run(addReceiver(spec, store.newId()), `${typed.name.trim()} added`)) return;
    openSection('Receivers');
    onDone();
  };
  return (
    <form onSubmit={add}>
      <TextField label="Name" value={typed.name} onInput={(name) => setTyped({ ...typed, name })} />
      <Choice
        label="Place"
        value={typed.place}
        options={PLACE_OPTIONS}
        onChoose={(place) => setTyped({ ...typed, place })}
      />
      {typed.modules.map((module, at) => (
        <fieldset class="rig-fieldset" key={at}>
          <legend class="soft">{typed.modules.length > 1 ? `Module ${at + 1}` : 'Channels'}</legend>
          <div class="field-pair">
            <TextField
              label={typed.modules.length > 1 ? 'Module' : 'Module, if it has one'}
              value={module.name}
              onInput={(name) => setModule(at, { name })}
            />
            <TextField
              label="How many channels"
              value={module.channels}
              onInput={(channels) => setModule(at, { channels })}
              inputMode="numeric"
            />
          </div>
          <Choice
            label="Outputs"
            value={module.outputs}
            options={OUTPUT_KINDS.map((value) => ({ value, name: OUTPUT_KIND_WORD[value] }))}
            onChoose={(outputs) => setModule(at, { outputs })}
          />
        </fieldset>
      ))}
      <div class="buttons">
        <Button onClick={() => setTyped({ ...typed, modules: [...typed.modules, BLANK] })}>
          Another module
        </Button>
        {typed.modules.length > 1 && (
          <Button onClick={() => setTyped({ ...typed, modules: typed.modules.slice(0, -1) })}>
            Remove module
          </Button>
        )}
      </div>
      <Button look="solid" class="rig-do" type="submit">
        Add the receiver
      </Button>
    </form>
  );
}
