import type { ComponentChildren } from 'preact';
import { Button } from './button.tsx';
import { Mark, type MarkState } from './mark.tsx';

export interface RowProps {
  readonly number?: string | undefined;
  readonly mark?: MarkState | undefined;
  readonly title: ComponentChildren;
  readonly under?: ComponentChildren;
  readonly word?: ComponentChildren;
  /** Missing for a row that only informs. */
  readonly onTap?: (() => void) | undefined;
  /** Read by a screen reader instead of the parts, where they read badly together. */
  readonly label?: string | undefined;
  readonly pressed?: boolean | undefined;
}

/** One line of a list: a number and a mark, a title, and a word about its state. */
export function Row({ number, mark, title, under, word, onTap, label, pressed }: RowProps) {
  const inside = (
    <>
      {(number !== undefined || mark) && (
        <span class="row-lead">
          {number !== undefined && <span class="row-number">{number}</span>}
          {mark && <Mark state={mark} />}
        </span>
      )}
      <span class="row-text">
        <strong>{title}</strong>
        {under !== undefined && under !== '' && <span class="soft">{under}</span>}
      </span>
      <span class="row-word">{word}</span>
    </>
  );
  if (!onTap) return <div class="row">{inside}</div>;
  return (
    <Button look="bare" class="row" onClick={onTap} label={label} pressed={pressed}>
      {inside}
    </Button>
  );
}
