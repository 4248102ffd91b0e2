import type { ComponentChildren } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { acceptPlans } from '../../../app/commands/plan.ts';
import { castInOrder } from '../../../day/cast-in-order.ts';
import type { PartId, TakeId, VoiceId } from '../../../day/model.ts';
import { recordersOf } from '../../../day/recorders/rolling.ts';
import { recordersPlanned, setupBesides, setupProblem } from '../../../plan/day/setup-plans.ts';
import type { Plan } from '../../../plan/setup/plan-next-setup.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { FromWhen } from '../../frame/from-when.tsx';
import { Page } from '../../frame/page/page.tsx';
import { goTo } from '../../frame/route.ts';
import { Button } from '../../kit/button.tsx';
import { Toggles } from '../../kit/toggles.tsx';
import { countOf, listOf, nameOf } from '../../words/chain.ts';
import { sentenceFor } from '../../words/problems.ts';
import { recorderName } from '../../words/recorder-names.ts';
import { Besides } from '../besides.tsx';
import { MoveList } from '../plan-moves.tsx';
import { RecorderPlan } from '../recorder-plan.tsx';
import { useSetupPlanner } from '../use-setup-planner.ts';
import { comingAlong, likelyGoal } from './unit-wanted.ts';

const NONE_GIVEN: readonly Plan[] = [];

/** Which recorders roll from when on, for whom, and the fewest moves to get there: the main one's first. */
export function MoveOut({ top }: { top: ComponentChildren }) {
  const day = useDay().day.value;
  const run = useRun();
  const all = recordersOf(day);
  const [before, setBefore] = useState<TakeId | undefined>();
  const [chosen, setChosen] = useState<readonly PartId[]>(() => likelyGoal(day, undefined));
  const [picked, setPicked] = useState<ReadonlySet<VoiceId> | null>(null);
  const recorders = all.map(({ id }) => id).filter((id) => chosen.includes(id));
  const wanted = useMemo(() => picked ?? comingAlong(day, before), [picked, day, before]);
  const move = useMemo(() => ({ recorders, wanted, before }), [recorders.join(' '), wanted, before]);
  const after = useMemo(() => (plans: readonly Plan[]) => setupProblem(day, move, plans), [day, move]);
  const [{ plans, isLooking, trouble }] = useSetupPlanner(after, NONE_GIVEN);
  const planned = recordersPlanned(day, move);
  const isWhole = recorders.length > 0 && plans.length === planned.length && !trouble;
  const besides = useMemo(() => setupBesides(day, move, plans), [day, move, plans]);
  const names = listOf(recorders.map((id) => recorderName(day, id)));
  const count = plans.reduce((sum, { moves }) => sum + moves.length, 0);

  const apply = (): void => {
    if (!run(acceptPlans(move, plans), `Unit moved to ${names}`)) return;
    goTo({ at: 'day', day: day.id, tab: 'now' });
  };
  return (
    <Page
      tab="unit"
      foot={
        <div class="unit-foot">
          <FromWhen before={before} onPlace={setBefore} />
          <Button look="solid" disabled={!isWhole} onClick={apply}>
            {isWhole && count > 0 ? `Apply ${countOf(count, 'move')}` : 'Apply'}
          </Button>
        </div>
      }
    >
      {top}
      <div class="section">
        <Toggles
          named
          label="Rolling from then on"
          options={all}
          on={recorders}
          onChange={(next) => setChosen(next)}
        />
      </div>
      {recorders.length === 0 && <p class="section">{sentenceFor({ code: 'no-recorder-rolls' })}</p>}
      {trouble && <p class="problem">{sentenceFor(trouble.problem)}</p>}
      {recorders.length > 0 &&
        planned.map((recorder, at) => (
          <RecorderPlan
            key={recorder}
            recorder={recorder}
            isMain={at === 0}
            plan={plans[at]}
            isLooking={isLooking && at === plans.length - 1}
          >
            <MoveList
              day={day}
              label={`Moves for ${recorderName(day, recorder)}, in their order`}
              moves={plans[at]?.moves ?? []}
              isStale={false}
            />
            <Besides day={day} besides={besides[at]?.besides ?? []} />
          </RecorderPlan>
        ))}
      <div class="section">
        <Toggles
          named
          label="Who is needed"
          options={castInOrder(day).map(({ id }) => ({ id, name: nameOf(day, id) }))}
          on={[...wanted]}
          onChange={(next) => setPicked(new Set(next))}
          none="Nobody in the cast yet."
        />
      </div>
    </Page>
  );
}
