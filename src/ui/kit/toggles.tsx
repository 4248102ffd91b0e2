import { Button } from './button.tsx';

interface TogglesProps {
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly on: readonly string[];
  readonly onChange: (on: string[]) => void;
  /** Names may be long, so each button is as wide as its name. */
  readonly named?: boolean;
  /** Said where there is nothing to choose from. */
  readonly none?: string;
}

/** Any number of a few, each a toggle button. */
export function Toggles({ label, options, on, onChange, named = false, none }: TogglesProps) {
  return (
    <fieldset class="choice">
      <legend class="soft">{label}</legend>
      <div class={named ? 'buttons' : 'toggles'}>
        {options.map(({ id, name }) => {
          const pressed = on.includes(id);
          return (
            <Button
              key={id}
              pressed={pressed}
              onClick={() => onChange(pressed ? on.filter((one) => one !== id) : [...on, id])}
            >
              {name}
            </Button>
          );
        })}
      </div>
      {options.length === 0 && none && <p class="soft">{none}</p>}
    </fieldset>
  );
}
