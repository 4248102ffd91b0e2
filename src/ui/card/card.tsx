import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { noteCardCheck, settleAll, settleCard, startLog } from '../../app/commands/card.ts';
import { recordingsArrived } from '../../app/import/arrivals.ts';
import { takesInOrder } from '../../day/takes.ts';
import { cardCheckOf } from '../../day/wrap/card-check.ts';
import { type Difference, openDifferences } from '../../reconcile/differences/difference.ts';
import { differencesOf } from '../../reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../reconcile/pairing/match-recordings.ts';
import type { ByteSource } from '../../wave/riff/header-reader.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { CardSummary } from './card-summary.tsx';
import { ChooseCard } from './choose-card.tsx';
import { DifferenceList } from './difference-list.tsx';
import { NOTHING_READ, readCard, sourceOf } from './read-card.ts';
import './card.css';

/** The card's own files against the log: differences, worst first, each resolved in one tap. */
export function Card() {
  const day = useDay().day.value;
  const run = useRun();
  const [read, setRead] = useState(NOTHING_READ);
  const [reading, setReading] = useState(false);
  const stopper = useRef<AbortController | null>(null);
  const match = useMemo(() => (read.finished ? matchRecordings(day, read.recordings) : null), [day, read]);
  const differences = useMemo(() => (match ? differencesOf(day, match) : []), [day, match]);
  const open = openDifferences(differences);

  const check = async (files: readonly ByteSource[]): Promise<void> => {
    stopper.current?.abort();
    const own = new AbortController();
    stopper.current = own;
    setReading(true);
    await readCard(files, own.signal, (now) => {
      if (stopper.current === own) setRead(now);
    });
    if (stopper.current === own) setReading(false);
  };
  // Where it cannot be loaded, that is said for every part of the app.
  const checkSample = async (): Promise<void> => {
    const { sampleCard } = await import('./sample-card.ts');
    await check(sampleCard(day));
  };
  useEffect(() => {
    const arrived = recordingsArrived.peek();
    recordingsArrived.value = [];
    if (arrived.length > 0) void check(arrived.map(sourceOf));
  }, []);
  const settle = (difference: Difference, at: number): void => {
    const settlement = difference.settlements[at];
    if (settlement) run(settleCard(settlement), settlement.kind === 'keep-log' ? 'Keep the log' : 'Settled');
  };
  const keepAll = (): void => {
    const kept = open.flatMap(({ settlements }) => settlements.find(({ kind }) => kind === 'keep-log') ?? []);
    run(settleAll(kept), `Log kept for ${countOf(kept.length, 'difference')}`);
  };
  const start = (): void => {
    run(startLog(read.recordings), `${countOf(read.recordings.length, 'take')} from the card`);
  };
  const note = (): void => {
    run(
      noteCardCheck(read.files, read.recordings.length, open.length),
      'Card marked checked; the report says so',
    );
  };

  return (
    <Page
      tab="card"
      foot={
        read.finished && (
          <div class="card-foot">
            <Button disabled={open.length === 0} onClick={keepAll}>
              Keep the log for all
            </Button>
            <Button look="solid" disabled={read.files === 0} onClick={note}>
              {open.length === 0 ? 'Mark card checked' : `Mark card checked, ${open.length} open`}
            </Button>
          </div>
        )
      }
    >
      <h1 class="section-title">Card check</h1>
      <ChooseCard
        read={read}
        reading={reading}
        onFiles={(files) => void check(files.map(sourceOf))}
        onSample={day.header.sample ? () => void checkSample().catch(() => {}) : undefined}
        onStop={() => stopper.current?.abort()}
      />
      {match && (
        <>
          <CardSummary read={read} match={match} open={open.length} last={cardCheckOf(day)} />
          {takesInOrder(day).length === 0 && read.recordings.length > 0 && (
            <div class="section">
              <p>
                Nothing is logged yet. The card can start the log: one take for every recording, as its files
                name it.
              </p>
              <Button look="solid" onClick={start}>
                Start the log from the card
              </Button>
            </div>
          )}
          <DifferenceList day={day} differences={differences} onSettle={settle} />
        </>
      )}
    </Page>
  );
}
