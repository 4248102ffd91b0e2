import type { RefObject } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { TakeId } from '../../day/model.ts';
import { dayPictures } from '../../report/printed/day-picture.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { modelOf } from '../frame/sending/report-model.ts';
import { TakeSheet } from '../frame/sheets/take-sheet.tsx';
import { Button } from '../kit/button.tsx';
import { remPx } from '../kit/drawing-size.ts';
import { Choice } from '../kit/field.tsx';
import { listOf } from '../words/chain.ts';
import { DayDrawing } from './day-drawing.tsx';
import { Legend } from './legend.tsx';
import { rowHeight } from './measures.ts';
import { SavePicture } from './save-picture.tsx';
import './picture.css';

const WIDTHS = [30, 42, 60, 84, 126] as const;
const FIRST = 2;

/** Who was on which track, take by take: bands that break where the chain changed. */
export function Picture() {
  const day = useDay().day.value;
  const [zoom, setZoom] = useState(FIRST);
  const [open, setOpen] = useState<TakeId | null>(null);
  const model = useMemo(() => modelOf(day, []), [day]);
  const pictures = useMemo(() => dayPictures(model), [model]);
  const [of, setOf] = useState<string | null>(null);
  const picture = pictures.find(({ owner }) => owner === of) ?? pictures[0]!;
  const item = open === null ? undefined : day.takeItems.get(open);
  const ground = useKeptMiddle(zoom);
  const row = rowHeight(useRoom(ground), picture.rows.length);
  const isEmpty = picture.columns.length === 0;
  const sizes = (
    <div class="picture-foot">
      <Button disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
        Smaller
      </Button>
      <Button disabled={zoom === WIDTHS.length - 1} onClick={() => setZoom(zoom + 1)}>
        Larger
      </Button>
      <SavePicture model={model} />
    </div>
  );
  return (
    <Page tab="picture" foot={isEmpty ? null : sizes}>
      <div class="picture-top">
        <h1 class="section-title">Who was on which track</h1>
        {pictures.length > 1 && (
          <Choice
            label="Tracks of"
            value={picture.owner}
            options={pictures.map(({ owner, on }) => ({ value: owner, name: listOf(on) }))}
            onChoose={setOf}
          />
        )}
      </div>
      {isEmpty ? (
        <p class="section">The picture begins with the first take.</p>
      ) : (
        <>
          <Legend />
          <div class="picture-ground" ref={ground} onScroll={keepNamesInSight}>
            <DayDrawing
              key={picture.owner}
              picture={picture}
              column={WIDTHS[zoom] ?? WIDTHS[FIRST]}
              row={row}
              onTake={setOpen}
            />
          </div>
        </>
      )}
      {item && <TakeSheet item={item} onClose={() => setOpen(null)} />}
    </Page>
  );
}

/** How tall the ground is, in drawing units: it changes as the phone turns and as text is made larger. */
function useRoom(ground: RefObject<HTMLDivElement | null>): number {
  const [room, setRoom] = useState(0);
  useLayoutEffect(() => {
    const shown = ground.current;
    if (!shown) return;
    const measure = (): void => setRoom((shown.clientHeight * 16) / remPx());
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(shown);
    watch.observe(document.documentElement);
    return () => watch.disconnect();
  }, [ground]);
  return room;
}

/** Tells the names how far the drawing is scrolled, in its own units. */
function keepNamesInSight({ currentTarget }: { readonly currentTarget: HTMLElement }): void {
  currentTarget.style.setProperty('--scrolled', String((currentTarget.scrollLeft * 16) / remPx()));
}

/** Keeps the centre of a scrolled area in place when its content grows or shrinks. */
function useKeptMiddle(zoom: number) {
  const ground = useRef<HTMLDivElement>(null);
  const last = useRef<{ readonly zoom: number; readonly width: number }>({ zoom, width: 0 });
  useLayoutEffect(() => {
    const shown = ground.current;
    if (!shown) return;
    const { zoom: before, width } = last.current;
    if (before !== zoom && width > 0 && shown.scrollLeft > 0) {
      const half = shown.clientWidth / 2;
      shown.scrollLeft = ((shown.scrollLeft + half) / width) * shown.scrollWidth - half;
    }
    last.current = { zoom, width: shown.scrollWidth };
  });
  return ground;
}
