import type { ComponentChildren } from 'preact';
import { useDay } from '../context.ts';
import { hrefOf } from '../route.ts';
import './prep.css';

/** The head of a page that belongs to the rig: its name, the way back, and its state in one line. */
export function PrepTop({ title, children }: { title: string; children?: ComponentChildren }) {
  const { id } = useDay().day.value;
  return (
    <div class="prep-top">
      <h1>{title}</h1>
      <a class="prep-back" href={hrefOf({ at: 'day', day: id, tab: 'rig' })}>
        Rig
      </a>
      <p class="prep-state">{children}</p>
    </div>
  );
}
