import { useEffect, useRef, useState } from 'preact/hooks';
import { callSlate, circleTake, rollTake } from '../../../app/commands/takes.ts';
import type { Take, TakeId } from '../../../day/model.ts';
import { slateText, takeText } from '../../../day/slate.ts';
import { currentSlate, lastTake, nextTake, ownOpenTake, slateAfter } from '../../../day/takes.ts';
import { Button } from '../../kit/button.tsx';
import { useDatabase, useDay, useRun } from '../context.ts';
import { useCut } from '../use-cut.ts';
import { elapsed } from './elapsed.ts';
import { NoteSheet, SlateSheet } from './sheets.ts';

/**
 * Roll and Cut, the largest thing on the screen, with the next slate and take filled in, and the current
 * take: this phone's open one, or else the day's last.
 */
export function RollDock() {
  const day = useDay().day.value;
  const run = useRun();
  const cut = useCut();
  const database = useDatabase();
  /** The slate sheet, or a note on the take that was current when it was tapped. */
  const [sheet, setSheet] = useState<'slate' | { readonly note: TakeId } | null>(null);
  const open = ownOpenTake(day, database);
  const last = open ?? lastTake(day);
  const slate = currentSlate(day, database);
  const next = nextTake(day, 'take', slate);
  const after = slateAfter(day, slate);
  const close = (): void => setSheet(null);
  return (
    <section class={open ? 'dock dock-rolling' : 'dock'} aria-label="Take">
      <div class="dock-slate">
        <Button look="bare" class="dock-name" onClick={() => setSheet('slate')}>
          <span class="unseen">Slate </span>
          <span class="dock-take">
            <TakeName name={takeText(open ?? next)} />
            {open && <Elapsed take={open} />}
          </span>
          <span class="soft">{open ? 'rolling' : 'next take'}</span>
        </Button>
        {!open && (
          <Button
            label={`setup ${slateText(after)}`}
            onClick={() => run(callSlate(after), `Slate ${slateText(after)}`)}
          >
            setup {endOf(slateText(after))}
          </Button>
        )}
      </div>
      <div class="dock-last">
        {last && (
          <>
            <Button
              pressed={last.circled}
              onClick={() =>
                run(
                  circleTake(last.id, !last.circled),
                  last.circled ? `${takeText(last)} not circled` : `${takeText(last)} circled`,
                )
              }
            >
              circle {shortName(last)}
              <span class="unseen"> take {takeText(last)}</span>
            </Button>
            <Button onClick={() => setSheet({ note: last.id })}>
              note {shortName(last)}
              <span class="unseen"> take {takeText(last)}</span>
            </Button>
          </>
        )}
      </div>
      {open ? (
        <Button look="bare" class="roll roll-open" onClick={() => cut(open)}>
          Cut
        </Button>
      ) : (
        <Button look="bare" class="roll" onClick={() => run(rollTake(), `${takeText(next)} rolling`)}>
          Roll
        </Button>
      )}
      {sheet === 'slate' && <SlateSheet onClose={close} />}
      {typeof sheet === 'object' && sheet && <NoteSheet take={sheet.note} onClose={close} />}
    </section>
  );
}

/** A long take name is cut at the start; a screen reader gets all of it. */
function TakeName({ name }: { name: string }) {
  const at = name.lastIndexOf('/');
  const shown = at > 0 ? endOf(name.slice(0, at)) + name.slice(at) : name;
  if (shown === name) return <strong>{name}</strong>;
  return (
    <>
      <span class="unseen">{name}</span>
      <strong class="dock-long" aria-hidden="true">
        {shown}
      </strong>
    </>
  );
}

const MOST_SHOWN = 5;

/** Slates of one scene differ at their ends. The word joiner (U+2060) keeps the ellipsis with the rest. */
const endOf = (slate: string): string =>
  slate.length > MOST_SHOWN ? `…\u2060${slate.slice(1 - MOST_SHOWN)}` : slate;

/** Fits a button beside the slate: the take number, or the name of a wild track. */
const shortName = (take: Take): string =>
  take.kind === 'wild' || take.kind === 'tone' ? takeText(take) : String(take.number);

/** How long a take has been rolling. It writes its own text, so that a tick redraws nothing else. */
function Elapsed({ take }: { take: Take }) {
  const { clock } = useDay();
  const text = useRef<HTMLElement>(null);
  useEffect(() => {
    const tick = (): void => {
      if (text.current) text.current.textContent = elapsed(clock.now().atMs - (take.rolledAt ?? 0));
    };
    tick();
    const timer = setInterval(tick, 500);
    return () => clearInterval(timer);
  }, [take, clock]);
  return <span class="mono dock-elapsed" ref={text} aria-hidden="true" />;
}
