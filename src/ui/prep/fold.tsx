import { signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import '../styles/prep.css';

/** The sections that are open, kept while the app runs so that another page does not close them. */
const opened = signal<ReadonlySet<string>>(new Set());

function toggle(name: string): void {
  const next = new Set(opened.peek());
  if (!next.delete(name)) next.add(name);
  opened.value = next;
}

interface FoldProps {
  readonly name: string;
  /** The whole section in one line. */
  readonly under: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A section in one line, which opens into its rows. */
export function Fold({ name, under, children }: FoldProps) {
  const open = opened.value.has(name);
  return (
    <section class="fold" data-open={open}>
      <h2>
        <button type="button" class="fold-head" aria-expanded={open} onClick={() => toggle(name)}>
          <span class="row-text">
            <strong>{name}</strong>
            <span class="soft">{under}</span>
          </span>
          <span class="fold-show">{open ? 'hide' : 'show'}</span>
        </button>
      </h2>
      {open && <div class="fold-body">{children}</div>}
    </section>
  );
}
