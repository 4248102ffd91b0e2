import { useState } from 'preact/hooks';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';

export interface Option {
  readonly id: string;
  readonly name: string;
  readonly word?: string | undefined;
}

interface PickerProps {
  readonly label: string;
  /** The current value, in words. */
  readonly now: string;
  readonly options: readonly Option[];
  readonly current?: string | null | undefined;
  readonly onPick: (id: string) => void;
}

/** One line that shows the current value and opens into the alternatives. */
export function Picker({ label, now, options, current, onPick }: PickerProps) {
  const [open, setOpen] = useState(false);
  return (
    <div class="picker">
      <Button look="bare" class="row" expanded={open} onClick={() => setOpen(!open)}>
        <span class="row-lead" />
        <span class="row-text">
          <span class="soft">{label}</span>
          <strong>{now}</strong>
        </span>
        <span class="row-word rig-show">{open ? 'keep' : 'change'}</span>
      </Button>
      {open && (
        <ul class="rows picker-list" aria-label={label}>
          {options.map(({ id, name, word }) => (
            <li key={id}>
              <Row
                title={name}
                word={word}
                pressed={current === undefined ? undefined : id === current}
                onTap={() => {
                  setOpen(false);
                  onPick(id);
                }}
              />
            </li>
          ))}
          {options.length === 0 && <li class="section soft">Nothing to choose from yet.</li>}
        </ul>
      )}
    </div>
  );
}

interface SelectFieldProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly Option[];
  readonly onChoose: (id: string) => void;
}

/** One of many, in the phone's own list. */
export function SelectField({ label, value, options, onChoose }: SelectFieldProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
        {options.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
