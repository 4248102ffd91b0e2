import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { takeText } from '../../day/slate.ts';
import { takesInOrder } from '../../day/takes.ts';
import { Button } from '../kit/button.tsx';
import { useDay } from './context.ts';
import { firstShown, markWords, SHOWN, stripOf, turned } from './from-when-strip.ts';
import './from-when.css';

interface FromWhenProps {
  /** The take that the change goes before; undefined means now. */
  readonly before: string | undefined;
  readonly onPlace: (before: string | undefined) => void;
  /** Asked instead of when a change starts. */
  readonly question?: string;
}

/**
 * The end of the line, with a gap before each of the last takes. The mark stands at now until it is moved to an
 * earlier gap: that is all a late correction takes. Looking at earlier takes moves nothing; now and the mark stay in
 * sight.
 */
export function FromWhen({ before, onPlace, question }: FromWhenProps) {
  const takes = takesInOrder(useDay().day.value);
  const [first, setFirst] = useState(() => firstShown(takes, before));
  const line = useRef<HTMLDivElement>(null);
  const label = useId();
  // On a narrow screen the line scrolls. A surrounding sheet is already open when this effect runs; a closed one
  // could not be scrolled.
  useEffect(() => {
    const mark = line.current?.querySelector('[aria-pressed="true"]');
    // Now is always in sight, and may stand over the take before it until that is scrolled to.
    const seen = before === undefined ? mark?.previousElementSibling : mark;
    seen?.scrollIntoView({ inline: 'nearest', block: 'nearest' });
  }, [before, first]);
  if (takes.length === 0) return null;
  const { shown, leftOutAtEnd, hasEarlier, hasLater } = stripOf(takes, first, before);
  return (
    <div class="from-when">
      <div class="from-head">
        <p class="soft" id={label}>
          {question ?? 'Starting when?'}{' '}
          {question === undefined && <strong>{markWords(takes, before)}</strong>}
        </p>
        {takes.length > SHOWN && (
          <>
            <Turn name="earlier" can={hasEarlier} onTap={() => setFirst(turned(takes, first, -SHOWN))} />
            <Turn name="later" can={hasLater} onTap={() => setFirst(turned(takes, first, SHOWN))} />
          </>
        )}
      </div>
      <div class="from-line" ref={line} role="group" aria-labelledby={label}>
        {shown.map(({ take, leftOut }) => (
          <>
            {leftOut && <LeftOut key={`left-out-${take.id}`} />}
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
        {leftOutAtEnd && <LeftOut key="left-out" />}
        <Gap here={before === undefined} name="now" onTap={() => onPlace(undefined)} />
      </div>
    </div>
  );
}

function Turn({ name, can, onTap }: { name: string; can: boolean; onTap: () => void }) {
  return (
    <Button look="bare" class="from-turn" disabled={!can} label={`${name} takes`} onClick={onTap}>
      {name}
    </Button>
  );
}

const LeftOut = () => (
  <span class="from-left-out" aria-hidden="true">
    …
  </span>
);

function Gap({ here, name, onTap }: { here: boolean; name: string; onTap: () => void }) {
  const word = name === 'now' ? 'now' : here ? 'here' : '';
  const label = name.includes(word) ? name : `${name}, ${word}`;
  return (
    <Button
      look="bare"
      class={name === 'now' ? 'from-gap from-now' : 'from-gap'}
      pressed={here}
      label={label}
      onClick={onTap}
    >
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
