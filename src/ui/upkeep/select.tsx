interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly name: string }[];
  readonly onChoose: (value: string) => void;
}

/** A choice among many, with its label above. */
export function Select({ label, value, options, onChoose }: SelectProps) {
  return (
    <label class="field">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
    </label>
  );
}
