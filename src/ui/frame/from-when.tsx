import { useEffect, useRef } from 'preact/hooks';
import { takeText } from '../../day/slate.ts';
import { takesInOrder } from '../../day/takes.ts';
import { Button } from '../kit/button.tsx';
import { useDay } from './context.ts';
import './from-when.css';

interface FromWhenProps {
  /** The take that the change goes before; undefined means now. */
  readonly before: string | undefined;
  readonly onPlace: (before: string | undefined) => void;
  readonly question?: string;
}

const SHOWN = 3;

/**
 * The end of the line, with a gap before each of the last takes. The mark stands at now until it is moved
 * to an earlier gap: that is all a late correction takes.
 */
export function FromWhen({ before, onPlace, question = 'Starting when?' }: FromWhenProps) {
  const takes = takesInOrder(useDay().day.value);
  const line = useRef<HTMLDivElement>(null);
  // On a narrow screen the line scrolls, and the mark starts at its end. A surrounding sheet is already
  // open when this effect runs; a closed one could not be scrolled.
  useEffect(() => {
    const mark = line.current?.querySelector('[aria-pressed="true"]');
    mark?.scrollIntoView({ inline: 'nearest', block: 'nearest' });
  }, [before]);
  if (takes.length === 0) return null;
  const found = takes.findIndex(({ id }) => id === before);
  const from = Math.max(0, found >= 0 ? Math.min(found, takes.length - SHOWN) : takes.length - SHOWN);
  const shown = takes.slice(from, from + SHOWN);
  return (
    <div class="from-when">
      <p class="soft" id="from-when">
        {question}
        {from > 0 && (
          <Button look="bare" class="from-earlier" onClick={() => onPlace(takes[Math.max(0, from - 1)]!.id)}>
            earlier
          </Button>
        )}
      </p>
      <div class="from-line" ref={line} role="group" aria-labelledby="from-when">
        {shown.map((take) => (
          <>
            <Gap
              key={`gap-${take.id}`}
              here={take.id === before}
              name={`before ${takeText(take)}`}
              onTap={() => onPlace(take.id)}
            />
            <span key={take.id} class="from-take">
              {takeText(take)}
            </span>
          </>
        ))}
        <Gap here={before === undefined} name="now" onTap={() => onPlace(undefined)} />
      </div>
    </div>
  );
}

function Gap({ here, name, onTap }: { here: boolean; name: string; onTap: () => void }) {
  const word = name === 'now' ? 'now' : here ? 'here' : '';
  const label = name.includes(word) ? name : `${name}, ${word}`;
  return (
    <Button look="bare" class="from-gap" pressed={here} label={label} onClick={onTap}>
      <svg width="14" height="26" viewBox="0 0 14 26" aria-hidden="true">
        {here ? (
          <path d="M7 25V3M1 10l6-7 6 7" fill="none" stroke="currentColor" stroke-width="2.2" />
        ) : (
          <path d="M7 19v6" fill="none" stroke="currentColor" stroke-width="1.4" />
        )}
      </svg>
      <span aria-hidden="true">{word}</span>
    </Button>
  );
}
