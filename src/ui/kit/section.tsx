import { signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button } from './button.tsx';
import './section.css';

/** The open sections, remembered while the app runs, so that changing pages does not close them. */
const opened = signal<ReadonlySet<string>>(new Set());

const keyOf = (name: string, of: string | undefined): string =>
  of === undefined ? name : `${name} of ${of}`;

export function openSection(name: string, of?: string): void {
  opened.value = new Set([...opened.peek(), keyOf(name, of)]);
}

function toggle(section: string): void {
  const next = new Set(opened.peek());
  if (!next.delete(section)) next.add(section);
  opened.value = next;
}

interface SectionProps {
  readonly name: string;
  /** Whose section it is, where several things have one of that name; the screen says it above. */
  readonly of?: string | undefined;
  /** A one-line summary of the section. */
  readonly under: ComponentChildren;
  readonly word?: string;
  readonly children: ComponentChildren;
}

/** A one-line section that opens into its rows. */
export function Section({ name, of, under, word, children }: SectionProps) {
  const section = keyOf(name, of);
  const open = opened.value.has(section);
  const frame = useRef<HTMLElement>(null);
  const isTapped = useRef(false);
  useEffect(() => {
    // Opened near the foot its rows would be under it: as many as fit come up, below the heading.
    if (open && isTapped.current) frame.current?.scrollIntoView({ block: 'nearest' });
    isTapped.current = false;
  }, [open]);
  const tap = (): void => {
    isTapped.current = true;
    toggle(section);
  };
  return (
    <section class="kit-section" data-open={open} ref={frame}>
      <h2>
        <Button look="bare" class="kit-section-head" expanded={open} onClick={tap}>
          <span class="row-text">
            <strong>
              {name}
              {of !== undefined && <span class="unseen"> of {of}</span>}
            </strong>
            <span class="soft">{under}</span>
          </span>
          <span class="kit-section-word">{word}</span>
          <svg class="kit-section-mark" width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
            <path d="M2 5l6 6 6-6" fill="none" stroke="currentColor" stroke-width="2" />
          </svg>
        </Button>
      </h2>
      {open && children}
    </section>
  );
}
