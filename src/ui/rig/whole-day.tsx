import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { describePart, reservePart, strikePart } from '../../app/commands/rig.ts';
import { type Part, type PartFields, RESERVED_USES, type ReservedUse } from '../../day/model.ts';
import type { Open } from '../../shared/open-word.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';

export interface PartSheetProps {
  readonly part: Part;
  readonly onClose: () => void;
}

interface WholeDayProps extends PartSheetProps {
  readonly children?: ComponentChildren;
}

/** Settings that hold all day whenever made: the name, the kind, and whether it is in the rig. */
export function WholeDay({ part, onClose, children }: WholeDayProps) {
  const run = useRun();
  const strike = (): void => {
    if (run(strikePart(part.id), `${part.name} deleted`)) onClose();
  };
  return (
    <section class="section whole-day">
      <h3 class="soft">For the whole day</h3>
      {children}
      <NameForm key={part.id} part={part} />
      <Button onClick={strike}>
        Delete {part.type === 'track' && !part.mix ? `track ${part.name}` : part.name}
      </Button>
    </section>
  );
}

export function NameForm({ part, label = 'Name' }: { part: Part; label?: string }) {
  const run = useRun();
  const [name, setName] = useState(part.name);
  const rename = (event: Event): void => {
    event.preventDefault();
    run(describePart(part.id, { name }), `${name.trim()} for the whole day`);
  };
  return (
    <form class="name-form" onSubmit={rename}>
      <TextField label={label} value={name} onInput={setName} />
      <Button type="submit" disabled={name.trim() === part.name}>
        Rename
      </Button>
    </form>
  );
}

/** A choice that is saved as soon as it is tapped. */
export function PartChoice<T extends string>(props: {
  part: Part;
  label: string;
  value: Open<T>;
  options: readonly { readonly value: T; readonly name: string }[];
  fields: (value: T) => PartFields;
}) {
  const { part, label, value, options, fields } = props;
  const run = useRun();
  const choose = (chosen: T): void => {
    const name = options.find((option) => option.value === chosen)?.name ?? chosen;
    run(describePart(part.id, fields(chosen)), `${part.name}: ${name}`);
  };
  return <Choice label={label} value={value} options={options} onChoose={choose} />;
}

const KEPT_FOR = (['voices', ...RESERVED_USES] as const).map((value) => ({ value, name: value }));

/** Reserves an output, an input or a send, so that no voice gets it. */
export function KeptFor({ part, label = 'Kept for' }: { part: Part; label?: string }) {
  const run = useRun();
  const choose = (value: ReservedUse | 'voices'): void => {
    const use = value === 'voices' ? null : value;
    run(reservePart(part.id, use), `${part.name} kept for ${value}`);
  };
  return <Choice label={label} value={part.reserved ?? 'voices'} options={KEPT_FOR} onChoose={choose} />;
}

/** The part as it stands now, or undefined once it is removed. */
export const usePart = (id: string): Part | undefined => useDay().day.value.rig.byId.get(id);
