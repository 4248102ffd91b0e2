import { useEffect, useMemo, useState } from 'preact/hooks';
import { cardsOf } from '../../app/card/card-on-hand.ts';
import { sourceOf } from '../../app/card/read-card.ts';
import { noteCardCheck, settleAll, startLog } from '../../app/commands/card.ts';
import { recordingsArrived } from '../../app/import/arrivals.ts';
import type { TakeId } from '../../day/model.ts';
import { takesInOrder } from '../../day/takes.ts';
import { cardCheckOf } from '../../day/wrap/card-check.ts';
import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import { causesOf } from '../../reconcile/causes/causes.ts';
import { openDifferences } from '../../reconcile/differences/difference.ts';
import { differencesOf } from '../../reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../reconcile/pairing/match-recordings.ts';
import { useApp, useDay, useRun } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { TakeSheet } from '../frame/sheets/take-sheet.tsx';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { CardOwners } from './card-owners.tsx';
import { CardSummary } from './card-summary.tsx';
import { CauseList } from './cause-list.tsx';
import { ChooseCard } from './choose-card.tsx';
import './card.css';

/** The card's own files against the log: differences, worst first, each resolved in one tap. */
export function Card() {
  const day = useDay().day.value;
  const run = useRun();
  const cards = cardsOf(day.id, useApp().parts.cards);
  const card = cards.card.value;
  const { recordings } = card;
  const isRead = card.files > 0 || card.refused.length > 0;
  const match = useMemo(
    () => (isRead && !card.reading ? matchRecordings(day, recordings, card.owners) : null),
    [day, recordings, card.owners, isRead, card.reading],
  );
  const differences = useMemo(() => (match ? differencesOf(day, match) : []), [day, match]);
  const open = useMemo(() => openDifferences(differences), [differences]);
  const causes = useMemo(() => causesOf(open), [open]);
  const [take, setTake] = useState<TakeId | null>(null);
  const opened = take === null ? undefined : day.takeItems.get(take);

  // Where it cannot be loaded, that is said for every part of the app.
  const checkSample = async (): Promise<void> => {
    const { sampleCard } = await import('./sample-card.ts');
    await cards.add(sampleCard(day));
  };
  useEffect(() => {
    const arrived = recordingsArrived.peek();
    recordingsArrived.value = [];
    if (arrived.length > 0) void cards.add(arrived.map(sourceOf));
  }, [cards]);
  const settle = (settlements: readonly CardSettlement[]): void => {
    const isKept = settlements.every(({ kind }) => kind === 'keep-log');
    run(settleAll(settlements), isKept ? 'Log kept' : 'Settled');
  };
  const keepAll = (): void => {
    const kept = open.flatMap(({ settlements }) => settlements.at(-1) ?? []);
    run(settleAll(kept), `Log kept for ${countOf(kept.length, 'difference')}`);
  };
  const start = (): void => {
    run(startLog(recordings), `${countOf(recordings.length, 'take')} from the card`);
  };
  const note = (): void => {
    if (match)
      run(
        noteCardCheck(match, differences, { files: card.files, stopped: card.stopped }),
        'Card marked checked; the report says so',
      );
  };

  return (
    <Page
      tab="card"
      foot={
        match && (
          <div class="card-foot">
            <Button disabled={open.length === 0} onClick={keepAll}>
              Keep the log for all
            </Button>
            <Button look="solid" disabled={card.files === 0} onClick={note}>
              {open.length === 0 ? 'Mark card checked' : `Mark checked, ${open.length} open`}
            </Button>
          </div>
        )
      }
    >
      <h1 class="section-title">Card check</h1>
      <ChooseCard
        card={card}
        onFiles={(files) => void cards.add(files.map(sourceOf))}
        onSample={day.header.sample ? () => void checkSample().catch(() => {}) : undefined}
        onStop={() => cards.stop()}
        onClear={() => void cards.clear()}
      />
      {match && (
        <>
          <CardOwners
            day={day}
            owned={match.owned}
            onOwn={(key, recorder) => void cards.own(key, recorder)}
          />
          <CardSummary card={card} match={match} open={open.length} last={cardCheckOf(day)} />
          {takesInOrder(day).length === 0 && recordings.length > 0 && (
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
          <CauseList
            day={day}
            causes={causes}
            kept={differences.length - open.length}
            onSettle={settle}
            onTake={setTake}
          />
        </>
      )}
      {opened && <TakeSheet item={opened} onClose={() => setTake(null)} />}
    </Page>
  );
}
