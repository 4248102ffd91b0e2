import { signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';

/** The sections that are open, kept while the app runs so that another tab does not close them. */
const opened = signal<ReadonlySet<string>>(new Set());

export function openSection(name: string): void {
  opened.value = new Set([...opened.peek(), name]);
}

function toggle(name: string): void {
  const next = new Set(opened.peek());
  if (!next.delete(name)) next.add(name);
  opened.value = next;
}

interface SectionProps {
  readonly name: string;
  /** The whole section in one line. */
  readonly under: string;
  readonly word?: string;
  readonly children: ComponentChildren;
}

/** A part of the rig in one line, which opens into its rows. */
export function Section({ name, under, word, children }: SectionProps) {
  const open = opened.value.has(name);
  return (
    <section class="rig-section" data-open={open}>
      <h2>
        <button type="button" class="row rig-heading" aria-expanded={open} onClick={() => toggle(name)}>
          <span class="row-text">
            <strong>{name}</strong>
            <span class="soft">{under}</span>
          </span>
          <span class="row-word">
            {word && <span class="rig-word">{word}</span>}
            <span class="rig-show">{open ? 'hide' : 'show'}</span>
          </span>
        </button>
      </h2>
      {open && <div class="rig-rows">{children}</div>}
    </section>
  );
}
