import { useMemo, useState } from 'preact/hooks';
import type { TakeId } from '../../day/model.ts';
import { dayPicture } from '../../report/day-picture.ts';
import { useDay } from '../context.ts';
import { Page } from '../parts/page.tsx';
import { DayDrawing } from '../picture/day-drawing.tsx';
import { TakeSheet } from '../sheets/take-sheet.tsx';
import { modelOf } from '../wrap/outgoing-files.ts';
import '../styles/picture.css';

const WIDTHS = [22, 34, 52, 80, 120] as const;

/** Who was on which track, take by take: bands that break where the chain changed. */
export function Picture() {
  const day = useDay().day.value;
  const [zoom, setZoom] = useState(2);
  const [open, setOpen] = useState<TakeId | null>(null);
  const picture = useMemo(() => dayPicture(modelOf(day, [])), [day]);
  const item = open === null ? undefined : day.line[day.placeOf.get(open) ?? -1];
  return (
    <Page
      tab="picture"
      foot={
        <div class="picture-foot">
          <button type="button" class="button" disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
            Smaller
          </button>
          <button
            type="button"
            class="button"
            disabled={zoom === WIDTHS.length - 1}
            onClick={() => setZoom(zoom + 1)}
          >
            Larger
          </button>
        </div>
      }
    >
      <h1 class="section-title">Who was on which track</h1>
      {picture.columns.length === 0 ? (
        <p class="section">The picture begins with the first take.</p>
      ) : (
        <div class="picture-ground">
          <DayDrawing picture={picture} columnWidth={WIDTHS[zoom] ?? 52} onTake={setOpen} />
        </div>
      )}
      {item && <TakeSheet item={item} onClose={() => setOpen(null)} />}
    </Page>
  );
}
