import { useState } from 'preact/hooks';
import { setFrequencies } from '../../app/commands/radio.ts';
import { formatMhz } from '../../app/commands/typed.ts';
import type { CleanSet } from '../../radio/clean/clean-set.ts';
import type { DayPlan } from '../../radio/day/day-plan.ts';
import { groupsOf, rangesFor } from '../../radio/day/day-ranges.ts';
import { carriersWithout } from '../../radio/day/named-hits.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/field.tsx';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf, partName } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { NewRange } from './range-form.tsx';
import { type SearchState, useSearch } from './use-search.ts';
import { rangeWords } from './words.ts';

const STEPS = { short: 100_000_000, long: 1_000_000_000 } as const;

type Which = 'all' | 'without';

/** Frequencies for a whole group of packs at once, clear of each other and of all that stay. */
export function SetSheet({ plan, onClose }: { plan: DayPlan; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const search = useSearch();
  const groups = groupsOf(day);
  const [group, setGroup] = useState(groups[0]?.group ?? '');
  const [which, setWhich] = useState<Which>('all');
  const packs = (groups.find((one) => one.group === group)?.packs ?? []).filter(
    (id) => which === 'all' || !day.rig.byId.get(id)?.khz,
  );
  const ranges = rangesFor(day, group);
  const spacing = ranges.flatMap(({ spacingKhz }) => spacingKhz ?? []);
  const { state } = search;
  const set = state.at === 'found' ? setOf(state.found) : undefined;
  const searched = state.at === 'found' || state.at === 'failed';

  const look = (stepBudget: number): void =>
    search.start({
      carriers: carriersWithout(plan, packs),
      guards: plan.guards,
      ranges,
      occupied: plan.occupied,
      spacingKhz: spacing.length > 0 ? Math.max(...spacing) : undefined,
      count: packs.length,
      stepBudget,
    });
  const take = (found: CleanSet): void => {
    const tunings = packs.map((transmitter, at) => ({ transmitter, khz: found.khz[at] ?? null }));
    const done = `${countOf(packs.length, 'pack')} tuned within ${formatMhz(found.spanKhz)} MHz`;
    if (run(setFrequencies(tunings), done)) onClose();
  };
  return (
    <Sheet
      title="Frequencies for several packs"
      under="Clean with each other and with every frequency that stays."
      onClose={onClose}
      foot={
        <div class="prep-foot">
          {state.at === 'running' ? (
            <Button onClick={search.stop}>Stop looking</Button>
          ) : (
            <Button
              look={set ? 'outline' : 'solid'}
              disabled={ranges.length === 0 || packs.length === 0 || (searched && isFinal(state))}
              onClick={() => look(searched ? STEPS.long : STEPS.short)}
            >
              {searched ? 'Look longer' : `Find ${countOf(packs.length, 'frequency', 'frequencies')}`}
            </Button>
          )}
          {set && (
            <Button look="solid" onClick={() => take(set)}>
              Use these frequencies
            </Button>
          )}
        </div>
      }
    >
      <div class="section">
        <Choice
          label="For the packs named"
          value={group}
          options={groups.map(({ group: value, packs: all }) => ({
            value,
            name: `${value || 'no letter'}, ${all.length}`,
          }))}
          onChoose={(value) => {
            setGroup(value);
            search.stop();
          }}
        />
        <Choice
          label="Which of them"
          value={which}
          options={[
            { value: 'all', name: 'All packs' },
            { value: 'without', name: 'Those without a frequency' },
          ]}
          onChoose={(value) => {
            setWhich(value);
            search.stop();
          }}
        />
        {ranges.length > 0 && (
          <p class="soft">{ranges.map(({ fromKhz, toKhz }) => rangeWords(fromKhz, toKhz)).join('; ')} MHz</p>
        )}
      </div>
      {ranges.length === 0 && <NewRange name={group} />}
      {state.at === 'running' && <Progress share={state.share} />}
      {state.at === 'failed' && <p class="problem">{sentenceFor(state.problem)}</p>}
      {set && <SetRows set={set} packs={packs} />}
      <Cautions of={['clear-of-hits', 'bands']} />
    </Sheet>
  );
}

/** Looking longer would change nothing: it is proven, or the question itself is wrong. */
function isFinal(state: SearchState): boolean {
  if (state.at === 'found') return setOf(state.found)?.provenShortest ?? true;
  return state.at === 'failed' && (state.problem.code !== 'no-clean-set' || state.problem.proven === true);
}

/** A set of one is the best position. */
function setOf({ set, positions }: { set?: CleanSet; positions?: readonly { khz: number }[] }) {
  if (set) return set;
  const [best] = positions ?? [];
  return best && { khz: [best.khz], spanKhz: 0, greedySpanKhz: 0, provenShortest: true };
}

const Progress = ({ share }: { share: number }) => (
  <p class="section radio-progress" role="status">
    <span>Looking</span>
    <progress max={1} value={share > 0 ? share : undefined} />
  </p>
);

function SetRows({ set, packs }: { set: CleanSet; packs: readonly string[] }) {
  const day = useDay().day.value;
  const greedy = set.greedySpanKhz;
  return (
    <>
      <p class="section">
        <strong>Within {formatMhz(set.spanKhz)} MHz.</strong>{' '}
        {set.provenShortest
          ? 'No narrower set exists at this spacing in these ranges.'
          : 'A narrower one may exist.'}{' '}
        {greedy === undefined
          ? 'Taking the next clean one each time would run out of room.'
          : greedy > set.spanKhz &&
            `Taking the next clean one each time would need ${formatMhz(greedy)} MHz.`}
      </p>
      <ul class="rows">
        {packs.map((id, at) => {
          const khz = set.khz[at];
          const was = day.rig.byId.get(id)?.khz;
          return (
            <li key={id}>
              <Row
                title={partName(day.rig, id)}
                under={was ? `was ${formatMhz(was)}` : 'had none'}
                word={<b class="mono radio-found">{khz === undefined ? '' : formatMhz(khz)}</b>}
              />
            </li>
          );
        })}
      </ul>
    </>
  );
}
