import type { InputHTMLAttributes } from 'preact';
import { type Open, unknownText } from '../../shared/open-word.ts';
import { Button } from './button.tsx';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly hint?: string;
  readonly type?: 'text' | 'date' | 'email' | 'number' | 'search';
  readonly inputMode?: 'text' | 'numeric' | 'decimal';
  readonly capitals?: 'characters' | 'words' | 'sentences' | 'off';
  readonly placeholder?: string;
  readonly list?: string;
}

/** One line of text with its label above. */
export function TextField({ label, value, onInput, hint, capitals = 'off', ...rest }: TextFieldProps) {
  // Preact's types allow `list` on some input types only; a plain object gets around that.
  const more = {
    ...rest,
    autoComplete: 'off',
    spellcheck: false,
    autoCapitalize: capitals,
  } as InputHTMLAttributes;
  return (
    <label class="field">
      <span>{label}</span>
      <input {...more} value={value} onInput={(event) => onInput(event.currentTarget.value)} />
      {hint && <span>{hint}</span>}
    </label>
  );
}

interface LongFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onInput: (value: string) => void;
  readonly placeholder?: string;
}

export function LongField({ label, value, onInput, placeholder }: LongFieldProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <textarea
        value={value}
        placeholder={placeholder}
        spellcheck={false}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
    </label>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  /** Empty if nothing was chosen. */
  readonly value: Open<T> | '';
  readonly options: readonly { readonly value: T; readonly name: string }[];
  readonly onChoose: (value: T) => void;
}

/**
 * A choice among a few, as buttons side by side; one is pressed, unless the value is unknown to this version,
 * which is shown.
 */
export function Choice<T extends string>({ label, value, options, onChoose }: ChoiceProps<T>) {
  return (
    <fieldset class="choice">
      <legend class="soft">{label}</legend>
      <div class="buttons">
        {options.map((option) => (
          <Button key={option.value} pressed={option.value === value} onClick={() => onChoose(option.value)}>
            {option.name}
          </Button>
        ))}
        {value !== '' && !options.some((option) => option.value === value) && (
          <span class="soft">{unknownText(value)}</span>
        )}
      </div>
    </fieldset>
  );
}
