import { signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button } from './button.tsx';
import './section.css';

/** The open sections, remembered while the app runs, so that changing pages does not close them. */
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
  /** A one-line summary of the section. */
  readonly under: ComponentChildren;
  readonly word?: string;
  readonly children: ComponentChildren;
}

/** A one-line section that opens into its rows. */
export function Section({ name, under, word, children }: SectionProps) {
  const open = opened.value.has(name);
  const frame = useRef<HTMLElement>(null);
  const isTapped = useRef(false);
  useEffect(() => {
    // Opened near the foot its rows would be under it: as many as fit come up, below the heading.
    if (open && isTapped.current) frame.current?.scrollIntoView({ block: 'nearest' });
    isTapped.current = false;
  }, [open]);
  const tap = (): void => {
    isTapped.current = true;
    toggle(name);
  };
  return (
    <section class="kit-section" data-open={open} ref={frame}>
      <h2>
        <Button look="bare" class="kit-section-head" expanded={open} onClick={tap}>
          <span class="row-text">
            <strong>{name}</strong>
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
