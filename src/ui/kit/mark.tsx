import type { JSX } from 'preact';

/** The state of a track, an input or a voice, drawn like a tally stroke; the word beside it says the same. */
export type MarkState =
  | 'mix'
  | 'single'
  | 'gang'
  | 'clash'
  | 'idle'
  | 'free'
  | 'muted'
  | 'reserved'
  | 'broken';

const SHAPES: Record<MarkState, JSX.Element> = {
  mix: <path d="M4 2h6v26H4z" fill="currentColor" />,
  single: <path d="M4 2h6v26H4z" fill="currentColor" />,
  gang: <path d="M1 2h4v26H1zM9 2h4v26H9zM5 8h4v3H5zM5 19h4v3H5z" fill="currentColor" />,
  clash: <path d="M3 2l8 6-8 6 8 6-8 8" fill="none" stroke="currentColor" stroke-width="2.6" />,
  idle: <path d="M4.8 2.8h4.4v24.4H4.8z" fill="none" stroke="currentColor" stroke-width="1.6" />,
  free: <path d="M7 3v26" fill="none" stroke="currentColor" stroke-width="2.4" stroke-dasharray="2.4 4" />,
  muted: (
    <>
      <path d="M4 2h6v10L4 16zM10 15v13H4v-9z" fill="currentColor" />
      <path d="M1 21L13 9" fill="none" stroke="currentColor" stroke-width="1.6" />
    </>
  ),
  reserved: (
    <path
      d="M4.8 2.8h4.4v24.4H4.8zM5 9h4M5 15h4M5 21h4"
      fill="none"
      stroke="currentColor"
      stroke-width="1.6"
    />
  ),
  broken: <path d="M4 2h6v8H4zM4 20h6v8H4z" fill="currentColor" />,
};

export function Mark({ state }: { state: MarkState }) {
  return (
    <svg class="mark" width="14" height="30" viewBox="0 0 14 30" aria-hidden="true">
      {SHAPES[state]}
    </svg>
  );
}
