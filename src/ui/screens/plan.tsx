import '../words/later-problems.ts';
import { useMemo, useState } from 'preact/hooks';
import { castInOrder } from '../../day/cast-in-order.ts';
import type { VoiceId } from '../../day/model.ts';
import { slateText } from '../../day/slate.ts';
import { currentSlate, slateAfter } from '../../day/takes.ts';
import { problemOf } from '../../plan/day-problem.ts';
import type { Move } from '../../plan/moves.ts';
import { neededNow } from '../../plan/needed-now.ts';
import { factsOfPlan } from '../../plan/plan-facts.ts';
import { planNextSetup } from '../../plan/plan-next-setup.ts';
import { ok } from '../../shared/result.ts';
import { useDatabase, useDay, useRun } from '../context.ts';
import { Page } from '../parts/page.tsx';
import { MoveList } from '../plan/move-list.tsx';
import { Outcome } from '../plan/outcome.tsx';
import { PinSheet } from '../plan/pin-sheet.tsx';
import { WantedList } from '../plan/wanted-list.tsx';
import { WeightsSheet } from '../plan/weights-sheet.tsx';
import { goTo } from '../route.ts';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import '../styles/plan.css';

/** Moves are the same if they read the same, whatever object they are. */
const nameOfMove = (move: Move): string => JSON.stringify(move);

/** The next setup: who is needed, what to do for it with the fewest moves, and a checklist to do it by. */
export function Plan() {
  const day = useDay().day.value;
  const run = useRun();
  const slate = currentSlate(day, useDatabase());
  const [wanted, setWanted] = useState<ReadonlySet<VoiceId>>(() => neededNow(day));
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [weighing, setWeighing] = useState(false);
  const [pinning, setPinning] = useState<VoiceId | null>(null);
  const problem = useMemo(() => problemOf(day, wanted), [day, wanted]);
  const planned = useMemo(() => planNextSetup(problem), [problem]);
  const plan = planned.ok ? planned.value : null;
  const moves = plan?.moves ?? [];
  const chosen = moves.filter((move) => ticked.has(nameOfMove(move)));

  const toggle = (voice: VoiceId): void => {
    const next = new Set(wanted);
    if (!next.delete(voice)) next.add(voice);
    setWanted(next);
  };
  const tick = (move: Move): void => {
    const next = new Set(ticked);
    if (!next.delete(nameOfMove(move))) next.add(nameOfMove(move));
    setTicked(next);
  };
  const accept = (accepted: readonly Move[]): void => {
    if (!plan) return;
    const done =
      accepted.length < moves.length ? `${countOf(accepted.length, 'move')} done` : 'The next setup stands';
    if (!run((now) => ok(factsOfPlan(now, wanted, plan, accepted)), done)) return;
    setTicked(new Set());
    if (accepted.length === moves.length) goTo({ at: 'day', day: day.id, tab: 'now' });
  };

  return (
    <Page
      tab="plan"
      foot={
        <div class="plan-foot">
          <button
            type="button"
            class="button"
            disabled={chosen.length === 0 || chosen.length === moves.length}
            onClick={() => accept(chosen)}
          >
            {chosen.length > 0 ? `Only the ${chosen.length} ticked` : 'Only what is ticked'}
          </button>
          <button type="button" class="button button-solid" disabled={!plan} onClick={() => accept(moves)}>
            {moves.length > 0 ? `Accept all ${moves.length}` : 'Accept'}
          </button>
        </div>
      }
    >
      <div class="plan-head">
        <h1>Next setup: {slateText(slateAfter(day, slate))}</h1>
        <button type="button" class="button-plain" onClick={() => setWeighing(true)}>
          what moves cost
        </button>
      </div>
      {planned.ok ? (
        <Outcome day={day} problem={problem} plan={planned.value} />
      ) : (
        <p class="problem">{sentenceFor(planned.problem)}</p>
      )}
      <MoveList day={day} moves={moves} isTicked={(move) => ticked.has(nameOfMove(move))} onTick={tick} />
      <WantedList
        day={day}
        cast={castInOrder(day)}
        wanted={wanted}
        problem={problem}
        plan={plan}
        onToggle={toggle}
        onPin={setPinning}
      />
      {weighing && <WeightsSheet onClose={() => setWeighing(false)} />}
      {pinning !== null && <PinSheet voice={pinning} onClose={() => setPinning(null)} />}
    </Page>
  );
}
