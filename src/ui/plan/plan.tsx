import { useLayoutEffect, useMemo, useState } from 'preact/hooks';
import { acceptPlans } from '../../app/commands/plan.ts';
import { goToScene, slateOfScene } from '../../app/commands/scenes.ts';
import { castInOrder } from '../../day/cast-in-order.ts';
import type { VoiceId } from '../../day/model.ts';
import { ticksOf } from '../../day/phones/ticks.ts';
import { mainNow } from '../../day/recorders/rolling.ts';
import type { Scene } from '../../day/scene.ts';
import { sceneAfter, sceneOfSlate, scenesAfter, voicesIn } from '../../day/scenes-in-order.ts';
import { slateText } from '../../day/slate.ts';
import { currentSlate, slateAfter } from '../../day/takes.ts';
import { aheadOf, withComing } from '../../plan/ahead/look-ahead.ts';
import { wantedIn } from '../../plan/ahead/scene-fit.ts';
import { problemOf } from '../../plan/day/day-problem.ts';
import { neededNow, tickableOf } from '../../plan/day/plan-facts.ts';
import { setupBesides } from '../../plan/day/setup-plans.ts';
import type { Move } from '../../plan/moves.ts';
import { SCENES_AHEAD } from '../../plan/plan-problem.ts';
import { useDatabase, useDay, useRun } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { goTo } from '../frame/route.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { AheadList } from './ahead-list.tsx';
import { BackupPlans } from './backup-plans.tsx';
import { Besides } from './besides.tsx';
import { DoneList } from './done-list.tsx';
import { Outcome } from './outcome.tsx';
import { PinSheet } from './pin-sheet.tsx';
import { PlanFoot } from './plan-foot.tsx';
import { MoveList } from './plan-moves.tsx';
import { PlannedFor } from './planned-for.tsx';
import { useBackups } from './use-backups.ts';
import { usePlanner, useSame } from './use-planner.ts';
import { WantedList } from './wanted-list.tsx';
import { WeightsSheet } from './weights-sheet.tsx';
import { betterWords, WORKING } from './words.ts';
import './plan.css';

/** The next setup: who is needed, the fewest moves to get there, and a checklist. */
export function Plan() {
  const day = useDay().day.value;
  const own = useDatabase();
  const run = useRun();
  const slate = currentSlate(day, useDatabase());
  const [wanted, setWanted] = useState<ReadonlySet<VoiceId>>(() => neededNow(day));
  const [weighing, setWeighing] = useState(false);
  const [pinning, setPinning] = useState<VoiceId | null>(null);
  const current = sceneOfSlate(day, slate);
  const next = sceneAfter(day, current);
  const [target, setTarget] = useState<Scene | undefined>(undefined);
  const coming = useMemo(
    () => scenesAfter(day, target ?? current).slice(0, SCENES_AHEAD),
    [day, target, current],
  );
  const people = useMemo(
    () => coming.map((scene) => new Set(voicesIn(day, scene).map(({ id }) => id))),
    [day, coming],
  );
  const problem = useSame(useMemo(() => withComing(problemOf(day, wanted), people), [day, wanted, people]));
  const [{ problem: answered, planned, isLooking, better, addition, whatIf }, planner] = usePlanner(problem);
  const cast = castInOrder(day);
  const isStale = answered !== problem;
  const shown = planned?.ok ? planned.value : undefined;
  const plan = isStale ? undefined : shown;
  const ahead = useMemo(
    () => (answered && shown ? aheadOf(answered, shown, people) : undefined),
    [answered, shown, people],
  );
  const setup = useMemo(() => ({ wanted }), [wanted]);
  const backups = useBackups(day, setup, plan, people);
  const plans = useMemo(() => (plan && backups.plans ? [plan, ...backups.plans] : []), [plan, backups.plans]);
  const tickOf = ticksOf(day);
  const all = plans.map(({ moves }) => moves);
  const chosen = all.map((moves) => moves.filter((move) => tickOf(tickableOf(move)) !== undefined));
  const count = chosen.flat().length;
  const besides = useMemo(
    () => setupBesides(day, setup, plans, count > 0 ? chosen : all).flatMap((one) => one.besides),
    [day, setup, plans],
  );
  useLayoutEffect(() => {
    if (count === 0) return;
    planner.begin();
    backups.begin();
  });

  const planFor = (scene: Scene): void => {
    setTarget(scene);
    setWanted(wantedIn(day, scene));
  };
  const toggle = (voice: VoiceId): void => {
    const next = new Set(wanted);
    if (!next.delete(voice)) next.add(voice);
    setWanted(next);
  };
  const accept = (accepted: readonly (readonly Move[])[]): void => {
    const isWhole = accepted === all;
    const done = isWhole ? 'Next setup applied' : `${countOf(count, 'move')} done`;
    // The slate goes to the scene first, so that who is needed is not said by hand in the one before.
    const to = target && target.id !== current?.id ? [goToScene(target.id)] : [];
    if (!run([...to, acceptPlans(setup, plans, accepted)], done)) return;
    if (isWhole) goTo({ at: 'day', day: day.id, tab: 'now' });
  };

  return (
    <Page
      tab="plan"
      foot={
        <PlanFoot
          moves={cast.length > 0 && plans.length > 0 ? all.flat().length : undefined}
          ticked={count}
          better={better && shown ? betterWords(better, shown) : backups.better}
          onAcceptTicked={() => accept(chosen)}
          onAcceptAll={() => accept(all)}
          onShowBetter={better ? planner.showBetter : backups.showBetter}
        />
      }
    >
      <div class="plan-head">
        <h1>Next setup: {slateText(target ? slateOfScene(day, target) : slateAfter(day, slate))}</h1>
        <div class="plan-head-links">
          {next && next.id !== target?.id && (
            <Button look="plain" onClick={() => planFor(next)}>
              for scene {next.number}
            </Button>
          )}
          <Button look="plain" onClick={() => setWeighing(true)}>
            what to avoid
          </Button>
        </div>
      </div>
      {day.rig.recorders.length > 0 && <PlannedFor />}
      {!planned && cast.length > 0 && (
        <p class="plan-cost soft" role="status">
          {WORKING}
        </p>
      )}
      {cast.length === 0 && (
        <p class="section">
          Nobody in the cast yet. Add performers under Cast, then plan who gets which pack.
        </p>
      )}
      {shown && cast.length > 0 && (
        <Outcome day={day} plan={shown} isLooking={isLooking} isStale={isStale} addition={addition} />
      )}
      {planned && !planned.ok && <p class="problem">{sentenceFor(planned.problem)}</p>}
      <MoveList day={day} label="Moves, in their order" moves={shown?.moves ?? []} isStale={isStale} />
      {shown && cast.length > 0 && (
        <BackupPlans day={day} backups={backups.backups} after={shown.moves.length} />
      )}
      {backups.trouble && <p class="problem">{sentenceFor(backups.trouble.problem)}</p>}
      <DoneList day={day} own={own} />
      {ahead && !isStale && <AheadList day={day} ahead={ahead} scenes={coming} />}
      <Besides day={day} besides={besides} />
      {cast.length > 0 && (
        <WantedList
          day={day}
          cast={cast}
          wanted={wanted}
          whatIf={whatIf}
          on={backups.backups.length > 0 ? mainNow(day) : undefined}
          onToggle={toggle}
          onWhatIf={planner.askWhatIf}
          onPin={setPinning}
        />
      )}
      {weighing && <WeightsSheet onClose={() => setWeighing(false)} />}
      {pinning !== null && <PinSheet voice={pinning} onClose={() => setPinning(null)} />}
    </Page>
  );
}
