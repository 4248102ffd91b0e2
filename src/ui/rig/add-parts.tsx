import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { inputsFrom } from '../../app/commands/chain.ts';
import { addInputs, addSelectors, addSend, addTracks, addTransmitters } from '../../app/commands/rig.ts';
import { INPUT_KINDS, type InputKind, RESERVED_USES, type ReservedUse } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { openSection } from '../kit/section.tsx';
import { countOf } from '../words/chain.ts';
import { INPUT_KIND_WORD } from '../words/connectors.ts';
import { runWords } from '../words/number-runs.ts';
import { asOptions } from './block-fields.tsx';
import { SelectField } from './picker.tsx';
import { useWhichRecorder, WhichRecorder } from './which-recorder.tsx';

export interface AddProps {
  readonly onDone: () => void;
}

interface FormProps {
  readonly word: string;
  /** Adds, and returns whether it was done. */
  readonly onAdd: () => boolean;
  /** The section that shows what was added, and whose it is where several have one of that name. */
  readonly section: string;
  readonly of?: string | undefined;
  readonly onDone: () => void;
  readonly children: ComponentChildren;
}

function AddForm({ word, onAdd, section, of, onDone, children }: FormProps) {
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!onAdd()) return;
    openSection(section, of);
    onDone();
  };
  return (
    <form onSubmit={submit}>
      {children}
      <Button look="solid" class="rig-do" type="submit">
        {word}
      </Button>
    </form>
  );
}

const HowMany = ({ count, onCount }: { count: string; onCount: (count: string) => void }) => (
  <TextField label="How many" value={count} onInput={onCount} inputMode="numeric" />
);

export function AddPacks({ onDone }: AddProps) {
  const store = useDay();
  const run = useRun();
  const [prefix, setPrefix] = useState('A');
  const [count, setCount] = useState('4');
  const add = (): boolean =>
    run(addTransmitters(prefix, Number(count), store.newId), `${countOf(Number(count), 'pack')} added`);
  return (
    <AddForm word="Add the packs" onAdd={add} section="Packs" onDone={onDone}>
      <div class="field-pair">
        <TextField
          label="Letters before the number"
          value={prefix}
          onInput={setPrefix}
          capitals="characters"
        />
        <HowMany count={count} onCount={setCount} />
      </div>
      <p class="soft">Numbers go on from packs with the same letters.</p>
    </AddForm>
  );
}

export function AddInputs({ onDone }: AddProps) {
  const store = useDay();
  const run = useRun();
  const [kind, setKind] = useState<InputKind>('mic');
  const [count, setCount] = useState('2');
  const to = useWhichRecorder();
  const add = (): boolean =>
    run(
      addInputs(kind, Number(count), store.newId, to.recorder),
      `${countOf(Number(count), 'input')} added${to.words}`,
    );
  return (
    <AddForm word="Add the inputs" onAdd={add} section="Inputs" of={to.of} onDone={onDone}>
      <WhichRecorder {...to} />
      <Choice
        label="Kind"
        value={kind}
        options={INPUT_KINDS.map((value) => ({ value, name: INPUT_KIND_WORD[value] }))}
        onChoose={setKind}
      />
      <HowMany count={count} onCount={setCount} />
      <p class="soft">Each feeds the next free track, while there is one.</p>
    </AddForm>
  );
}

export function AddTracks({ onDone }: AddProps) {
  const store = useDay();
  const run = useRun();
  const [count, setCount] = useState('2');
  const to = useWhichRecorder();
  const add = (): boolean =>
    run(
      addTracks(Number(count), store.newId, to.recorder),
      `${countOf(Number(count), 'track')} added${to.words}`,
    );
  return (
    <AddForm word="Add the tracks" onAdd={add} section="Tracks" of={to.of} onDone={onDone}>
      <WhichRecorder {...to} />
      <HowMany count={count} onCount={setCount} />
      <p class="soft">Iso and pre-fader; tap a track to change it.</p>
    </AddForm>
  );
}

export function AddSend({ onDone }: AddProps) {
  const store = useDay();
  const run = useRun();
  const [name, setName] = useState('');
  const [use, setUse] = useState<ReservedUse>('comms');
  const to = useWhichRecorder();
  const add = (): boolean =>
    run(addSend(name, use, store.newId, to.recorder), `${name.trim()} added${to.words}`);
  return (
    <AddForm word="Add the send" onAdd={add} section="Sends" of={to.of} onDone={onDone}>
      <WhichRecorder {...to} />
      <TextField label="Name" value={name} onInput={setName} />
      <Choice
        label="For"
        value={use}
        options={RESERVED_USES.map((value) => ({ value, name: value }))}
        onChoose={setUse}
      />
    </AddForm>
  );
}

export function AddSelectors({ onDone }: AddProps) {
  const day = useDay().day.value;
  const { rig } = day;
  const run = useRun();
  const switched = new Set(rig.selectors.map(({ input }) => input));
  const bare = rig.inputs.filter(({ id }) => !switched.has(id));
  const [typed, setTyped] = useState({ first: bare[0]?.id ?? '', count: '', a: 'cart', b: 'far box' });
  const set = (fields: Partial<typeof typed>): void => setTyped({ ...typed, ...fields });
  const there = inputsFrom(rig, typed.first).filter(({ id }) => !switched.has(id));
  const count = typed.count.trim() === '' ? there.length : Math.max(0, Math.floor(Number(typed.count)) || 0);
  const before = there.slice(0, count);
  const add = (): boolean =>
    run(
      addSelectors(
        before.map(({ id }) => id),
        [typed.a, typed.b],
      ),
      `${countOf(before.length, 'selector')} added`,
    );
  return (
    <AddForm word="Add the bank" onAdd={add} section="Selectors" onDone={onDone}>
      <div class="field-pair">
        <SelectField
          label="First input"
          value={typed.first}
          options={asOptions(day, bare)}
          onChoose={(first) => set({ first })}
        />
        <TextField
          label="How many"
          value={typed.count}
          placeholder={String(there.length)}
          onInput={(value) => set({ count: value })}
          inputMode="numeric"
        />
      </div>
      <div class="field-pair">
        <TextField label="First position" value={typed.a} onInput={(a) => set({ a })} />
        <TextField label="Second position" value={typed.b} onInput={(b) => set({ b })} />
      </div>
      <p>
        {before.length > 0
          ? `Before ${runWords(before.map(({ name }) => name))}; the leads there now stay at ${typed.a.trim() || 'the first position'}.`
          : 'Every input there has a selector.'}
      </p>
    </AddForm>
  );
}
