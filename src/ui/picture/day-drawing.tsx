import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { TakeId } from '../../day/model.ts';
import type { DayPicture, PictureBand, PictureColumn } from '../../report/printed/day-picture.ts';
import { Band } from './band.tsx';
import {
  bandWidth,
  bandWords,
  FOOT,
  GUTTER,
  HEAD,
  NAME_SIZE,
  nameSize,
  slateLabels,
  slateRoom,
  takeNumber,
} from './measures.ts';
import { nextPlace, type PicturePlace } from './next-place.ts';

interface DrawingProps {
  readonly picture: DayPicture;
  /** Units per take. */
  readonly column: number;
  /** Units per track. */
  readonly row: number;
  readonly onTake: (take: TakeId) => void;
}

/** Every column and band is a button, but only one is in the tab order; arrow keys reach the rest. */
function usePlaces(picture: DayPicture) {
  const [here, setHere] = useState<PicturePlace>({ row: -1, at: 0 });
  const ground = useRef<HTMLDivElement>(null);
  const place = ({ row, at }: PicturePlace, label: string, onTap: (event: MouseEvent | null) => void) => ({
    role: 'button' as const,
    tabindex: here.row === row && here.at === at ? 0 : -1,
    'data-place': `${row} ${at}`,
    'aria-label': label,
    onClick: (event: MouseEvent) => onTap(event),
    onFocus: () => setHere({ row, at }),
    onKeyDown(event: KeyboardEvent) {
      const next = nextPlace(picture, { row, at }, event.key);
      if (!next && event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      if (!next) onTap(null);
      else ground.current?.querySelector<SVGElement>(`[data-place="${next.row} ${next.at}"]`)?.focus();
    },
  });
  return { ground, place };
}

/** Takes across, tracks down. Take names and track numbers stay in sight. */
export function DayDrawing({ picture, column, row: tall, onTake }: DrawingProps) {
  const { columns, rows } = picture;
  const { ground, place } = usePlaces(picture);
  const width = columns.length * column + 4;
  const height = rows.length * tall + FOOT;
  const takeUnder = (band: PictureBand, event: MouseEvent | null): TakeId => {
    const at = event ? columnUnder(event, width, column) : band.from;
    return columns[Math.max(band.from, Math.min(band.to, at))]?.takeId ?? band.fromTake;
  };
  return (
    <div class="picture-grid" role="group" aria-label="Picture of the day" ref={ground}>
      <Drawing part="corner" width={GUTTER} height={HEAD} />
      <Drawing part="heads" width={width} height={HEAD}>
        {columns.map((take, at) => (
          <g
            key={take.takeId}
            class="picture-take"
            {...place({ row: -1, at }, `${take.text}${take.circled ? ', circled' : ''}, take`, () =>
              onTake(take.takeId),
            )}
          >
            <TakeName take={take} x={at * column} width={column} />
          </g>
        ))}
        {slateLabels(columns).map((slate) => {
          const x = slate.at * column;
          return (
            <g
              key={slate.at}
              class="picture-label picture-slate"
              style={{ '--start': x, '--room': slateRoom(slate, column) }}
            >
              <text x={x + 6} y={17} font-size={NAME_SIZE} class="picture-name">
                {slate.text}
              </text>
            </g>
          );
        })}
      </Drawing>
      <Drawing part="numbers" width={GUTTER} height={height}>
        {rows.map(({ track, number }, at) => (
          <text
            key={track}
            x={GUTTER - 8}
            y={at * tall + tall / 2 + nameSize(tall) * 0.36}
            font-size={nameSize(tall)}
            text-anchor="end"
            class="picture-number"
          >
            {number}
          </text>
        ))}
      </Drawing>
      <Drawing part="bands" width={width} height={height}>
        {columns.map(({ takeId, startsSetup }, at) => (
          <path
            key={takeId}
            d={`M${at * column} 0V${height}`}
            class={startsSetup ? 'picture-setup' : 'picture-line'}
          />
        ))}
        {rows.map(({ track, number, bands }, row) =>
          bands.map((band, at) => (
            <g
              key={`${track} ${band.fromTake}`}
              class="picture-band"
              {...place(
                { row, at },
                `${bandWords(band)}, track ${number}, ${columns[band.from]?.text} to ${columns[band.to]?.text}`,
                (event) => onTake(takeUnder(band, event)),
              )}
            >
              <rect
                x={band.from * column}
                y={row * tall}
                width={bandWidth(band, column)}
                height={tall}
                fill="transparent"
              />
              <Band band={band} column={column} top={row * tall} row={tall} />
            </g>
          )),
        )}
      </Drawing>
    </div>
  );
}

interface PartProps {
  readonly part: 'corner' | 'heads' | 'numbers' | 'bands';
  readonly width: number;
  readonly height: number;
  readonly children?: ComponentChildren;
}

const Drawing = ({ part, width, height, children }: PartProps) => (
  // biome-ignore lint/a11y/noSvgWithoutTitle: a part of a group that has a name
  <svg
    class={`picture picture-${part}`}
    width={`${width / 16}rem`}
    height={`${height / 16}rem`}
    viewBox={`0 0 ${width} ${height}`}
  >
    {children}
  </svg>
);

function columnUnder(event: MouseEvent, width: number, column: number): number {
  const drawing = (event.currentTarget as SVGElement).ownerSVGElement?.getBoundingClientRect();
  return drawing ? Math.floor(((event.clientX - drawing.left) / drawing.width) * (width / column)) : 0;
}

interface TakeNameProps {
  readonly take: PictureColumn;
  readonly x: number;
  readonly width: number;
}

/** Where the numbers of the takes stand, under their slates. */
const NUMBER_LINE = 34;

/** A take's number over its column, in a ring if circled. */
function TakeName({ take, x, width }: TakeNameProps) {
  const middle = x + width / 2;
  const { number, size } = takeNumber(take, width);
  return (
    <>
      <path
        d={`M${x} ${take.startsSetup ? 0 : NUMBER_LINE - 10}V${HEAD}`}
        class={take.startsSetup ? 'picture-setup' : 'picture-line'}
      />
      <rect x={x} y="0" width={width} height={HEAD} fill="transparent" />
      {take.circled && (
        <ellipse cx={middle} cy={NUMBER_LINE} rx={width / 2 - 2} ry="10.5" class="picture-circle" />
      )}
      <text
        x={middle}
        y={NUMBER_LINE + size * 0.36}
        font-size={size}
        text-anchor="middle"
        class="picture-name"
      >
        {number}
      </text>
    </>
  );
}
