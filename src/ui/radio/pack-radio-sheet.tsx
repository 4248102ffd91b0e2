import { useEffect } from 'preact/hooks';
import { setFrequencies, switchTransmitters } from '../../app/commands/radio.ts';
import { formatMhz } from '../../app/commands/typed.ts';
import { spreadOut } from '../../radio/clean/clean-positions.ts';
import type { DayPlan, PlanCarrier } from '../../radio/day/day-plan.ts';
import { rangeProblemOf, rangesFor } from '../../radio/day/day-ranges.ts';
import { carriersWithout, namedHits } from '../../radio/day/named-hits.ts';
import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Choice } from '../kit/field.tsx';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { sentenceFor } from '../words/problems.ts';
import { NewRange } from './range-form.tsx';
import { useSearch } from './use-search.ts';
import { carrierWords, hitWords, roomWords } from './words.ts';

const SHOWN = 12;

interface PackRadioProps {
  readonly pack: PlanCarrier;
  readonly plan: DayPlan;
  readonly analysis: Analysis | undefined;
  readonly onClose: () => void;
}

/** One pack on the air: what hits it, whether it is on, and its free frequencies, best first. */
export function PackRadioSheet({ pack, plan, analysis, onClose }: PackRadioProps) {
  const day = useDay().day.value;
  const run = useRun();
  const hits = analysis ? namedHits(analysis, plan).filter(({ victim }) => victim.id === pack.id) : [];
  const misfit = pack.khz === null ? undefined : rangeProblemOf(day, pack.name, pack.khz);
  return (
    <Sheet
      title={carrierWords(day, pack)}
      under={pack.khz === null ? 'no frequency yet' : `${formatMhz(pack.khz)} MHz`}
      onClose={onClose}
    >
      {misfit && <p class="problem">{sentenceFor(misfit)}</p>}
      {hits.length > 0 && (
        <ul class="rows">
          {hits.slice(0, 6).map((named, at) => (
            <li key={at}>
              <Row mark="clash" title={hitWords(named, plan.guards)} />
            </li>
          ))}
        </ul>
      )}
      <div class="section">
        <Choice
          label="On the air"
          value={pack.on ? 'on' : 'off'}
          options={[
            { value: 'on', name: 'on' },
            { value: 'off', name: 'off' },
          ]}
          onChoose={(value) =>
            run(switchTransmitters([pack.id], value === 'on'), `${pack.name} switched ${value}`)
          }
        />
      </div>
      <CleanOnes pack={pack} plan={plan} onDone={onClose} />
    </Sheet>
  );
}

function CleanOnes({ pack, plan, onDone }: { pack: PlanCarrier; plan: DayPlan; onDone: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const { state, start } = useSearch();
  const ranges = rangesFor(day, pack.name);
  const asked = JSON.stringify([ranges, plan.guards, plan.occupied, carriersWithout(plan, [pack.id])]);
  useEffect(() => {
    if (ranges.length === 0) return;
    start({
      carriers: carriersWithout(plan, [pack.id]),
      guards: plan.guards,
      ranges,
      occupied: plan.occupied,
      spacingKhz: pack.spacingKhz,
      count: 1,
      stepBudget: 0,
    });
  }, [asked]);

  if (ranges.length === 0) return <NewRange name={pack.name} />;
  const positions = state.at === 'found' ? (state.found.positions ?? []) : [];
  const best = spreadOut(positions, Math.max(plan.guards.carrierKhz, 25), SHOWN);
  const take = (khz: number): void => {
    const done = `${pack.name} on ${formatMhz(khz)} MHz`;
    if (run(setFrequencies([{ transmitter: pack.id, khz }]), done)) onDone();
  };
  return (
    <>
      <p class="section-title" role="status">
        {state.at === 'failed'
          ? sentenceFor(state.problem)
          : state.at === 'found'
            ? `${positions.length} clean frequencies, most room first`
            : 'Looking for clean frequencies'}
      </p>
      <ul class="rows">
        {best.map((position) => (
          <li key={position.khz}>
            <Row
              title={<span class="mono">{formatMhz(position.khz)}</span>}
              under={roomWords(position)}
              word="use"
              onTap={() => take(position.khz)}
            />
          </li>
        ))}
      </ul>
    </>
  );
}
