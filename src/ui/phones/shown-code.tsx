import { useMemo } from 'preact/hooks';
import { drawCode } from '../../camera/code-drawing.ts';

interface ShownCodeProps {
  readonly text: string;
  /** What a screen reader says of it. */
  readonly label: string;
  readonly number?: number;
}

/** A code for the other phone's camera, as large as the sheet is wide. */
export function ShownCode({ text, label, number }: ShownCodeProps) {
  const { size, path } = useMemo(() => drawCode(text), [text]);
  return (
    <svg
      class="shown-code"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      data-number={number}
      shape-rendering="crispEdges"
    >
      <path d={path} />
    </svg>
  );
}
