import type { ButtonHTMLAttributes, Ref } from 'preact';

const LOOKS = { outline: 'button', solid: 'button button-solid', plain: 'button-plain', bare: '' } as const;

interface ButtonProps extends ButtonHTMLAttributes {
  /** `solid` is what is most likely wanted, `plain` a word among text, `bare` whatever its class says. */
  readonly look?: keyof typeof LOOKS;
  readonly class?: string;
  /** Whether it is on, for one that stays on. */
  readonly pressed?: boolean | undefined;
  /** Whether what it opens is open. */
  readonly expanded?: boolean;
  /** What a screen reader says in place of what is on it. */
  readonly label?: string | undefined;
  readonly ref?: Ref<HTMLButtonElement>;
}

/** Every button of the app. It sends no form unless its type says so. */
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
