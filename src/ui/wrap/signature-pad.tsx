import { useRef, useState } from 'preact/hooks';
import { STROKES_HIGH, STROKES_WIDE, type Stroke, strokesPath } from '../../shared/strokes.ts';
import { Button } from '../kit/button.tsx';

interface PadProps {
  readonly strokes: readonly Stroke[];
  readonly onDraw: (strokes: readonly Stroke[]) => void;
}

/** A field to sign in with a finger, a pen or a mouse. Whoever cannot draw types the name elsewhere. */
export function SignaturePad({ strokes, onDraw }: PadProps) {
  const [drawing, setDrawing] = useState<Stroke | null>(null);
  // Several points may come before the next drawing.
  const points = useRef<[number, number][]>([]);
  const add = (event: PointerEvent): void => {
    const { left, top, width, height } = (event.currentTarget as Element).getBoundingClientRect();
    points.current.push([
      ((event.clientX - left) / width) * STROKES_WIDE,
      ((event.clientY - top) / height) * STROKES_HIGH,
    ]);
    setDrawing([...points.current]);
  };
  const start = (event: PointerEvent): void => {
    if (!event.isPrimary || event.button !== 0) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    points.current = [];
    add(event);
  };
  const end = (): void => {
    if (points.current.length > 0) onDraw([...strokes, points.current]);
    points.current = [];
    setDrawing(null);
  };
  const move = (event: PointerEvent): void => {
    if (points.current.length > 0) add(event);
  };
  const all = drawing ? [...strokes, drawing] : strokes;
  return (
    <div class="signature">
      <svg
        viewBox={`0 0 ${STROKES_WIDE} ${STROKES_HIGH}`}
        role="img"
        aria-label={all.length > 0 ? 'Signature, signed' : 'Signature, empty'}
        onPointerDown={start}
        onPointerMove={move}
        onPointerUp={end}
        onPointerCancel={end}
      >
        <path class="signature-line" d={`M60 ${STROKES_HIGH - 70}H${STROKES_WIDE - 60}`} />
        <path class="signature-strokes" d={strokesPath(all)} />
      </svg>
      <div class="signature-foot">
        <span class="soft">Sign here</span>
        <Button look="plain" disabled={all.length === 0} onClick={() => onDraw([])}>
          Clear
        </Button>
      </div>
    </div>
  );
}
