import type { ButtonHTMLAttributes, Ref } from 'preact';

const LOOKS = { outline: 'button', solid: 'button button-solid', plain: 'button-plain', bare: '' } as const;

interface ButtonProps extends ButtonHTMLAttributes {
  /** `solid` is the most likely action, `plain` looks like text, `bare` leaves the look to its class. */
  readonly look?: keyof typeof LOOKS;
  readonly class?: string;
  /** For toggle buttons: whether it is on. */
  readonly pressed?: boolean | undefined;
  /** Whether what it opens is open. */
  readonly expanded?: boolean;
  /** Read by a screen reader instead of the button's text. */
  readonly label?: string | undefined;
  readonly ref?: Ref<HTMLButtonElement>;
}

/** Every button of the app. It submits a form only if its type says so. */
export function Button({ look = 'outline', pressed, expanded, label, ...given }: ButtonProps) {
  const classes = `${LOOKS[look]} ${given.class ?? ''}`.trim();
  return (
    <button
      type="button"
      {...given}
      class={classes || undefined}
      aria-pressed={pressed}
      aria-expanded={expanded}
      aria-label={label}
    />
  );
}
