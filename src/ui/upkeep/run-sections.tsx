import type { Day } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { type DayRun, dcRun, networkRun, runsOf } from '../../upkeep/wiring/day-runs.ts';
import { leadsOfDay } from '../../upkeep/wiring/day-wiring.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { Section } from '../kit/section.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { BoxDrawing, SpareInputs } from './box-drawing.tsx';
import { boxLeads, spareInputs } from './box-leads.ts';
import { figureWords, hoursWords, LIMIT_SHORT, RUN_CAUTION_SHORT } from './words.ts';

interface RunsProps {
  readonly day: Day;
  readonly onRun: (id: string | undefined, type: 'network' | 'dc') => void;
}

/** Remote boxes on network leads, each with the volts at its end and what is wrong. */
export function FarBoxSection({ day, onRun }: RunsProps) {
  const runs = runsOf(day).filter(({ type }) => type === 'network');
  const boxes = boxLeads(day, leadsOfDay(day)).filter(({ receiver }) => receiver.place === 'remote');
  return (
    <Section
      name="The far box"
      under={runs.length === 0 ? 'power and sound on a network lead' : countOf(runs.length, 'run')}
    >
      <ul class="rows">
        {runs.map((run) => (
          <li key={run.id}>
            <NetworkRow day={day} run={run} onTap={() => onRun(run.id, 'network')} />
          </li>
        ))}
      </ul>
      <Button look="bare" class="prep-more" onClick={() => onRun(undefined, 'network')}>
        Work out a network lead
      </Button>
      {boxes.map((box) => (
        <BoxDrawing key={box.receiver.id} box={box} />
      ))}
      {boxes.length > 0 && <SpareInputs inputs={spareInputs(day)} />}
      <Cautions of={['network-power', 'passive-feed', 'audio-network']} />
    </Section>
  );
}

function NetworkRow({ day, run, onTap }: { day: Day; run: DayRun; onTap: () => void }) {
  const { lead, sound } = networkRun(day, run);
  const length = `${figureWords(run.metres, 0)} m (${figureWords(run.metres / 0.3048, 0)} ft), class ${run.powerClass}`;
  if (!lead.ok) return <Row mark="broken" title={run.name} under={sentenceFor(lead.problem)} onTap={onTap} />;
  const { loadVolts, marginVolts, broken } = lead.value;
  const bad = broken[0];
  const share = sound?.ok ? ` · sound ${figureWords(sound.value.percent, 0)} % of the link` : '';
  return (
    <Row
      mark={bad ? 'clash' : 'single'}
      title={run.name}
      under={`${length}${share}`}
      word={
        bad ? (
          <>
            <strong>too long: {LIMIT_SHORT[bad]}</strong>
            {loadVolts === undefined ? '' : `${figureWords(loadVolts, 1)} V`}
          </>
        ) : (
          `${figureWords(loadVolts ?? 0, 1)} V, ${figureWords(marginVolts ?? 0, 1)} V to spare`
        )
      }
      onTap={onTap}
    />
  );
}

/** DC leads on the cart: the volts at the device and how long the battery lasts. */
export function CartSection({ day, onRun }: RunsProps) {
  const runs = runsOf(day).filter(({ type }) => type === 'dc');
  return (
    <Section
      name="Cart power"
      under={runs.length === 0 ? 'voltage drop and battery life of DC leads' : countOf(runs.length, 'lead')}
    >
      <ul class="rows">
        {runs.map((run) => (
          <li key={run.id}>
            <DcRow day={day} run={run} onTap={() => onRun(run.id, 'dc')} />
          </li>
        ))}
      </ul>
      <Button look="bare" class="prep-more" onClick={() => onRun(undefined, 'dc')}>
        Work out a DC lead
      </Button>
      <Cautions of={['cart-power', 'connectors', 'mains']} />
    </Section>
  );
}

function DcRow({ day, run, onTap }: { day: Day; run: DayRun; onTap: () => void }) {
  const { lead, runtime } = dcRun(run);
  if (!lead.ok) return <Row mark="broken" title={run.name} under={sentenceFor(lead.problem)} onTap={onTap} />;
  const recorder = recordersOf(day).find(({ id }) => id === run.recorder);
  const powers = recorder && recordersOf(day).length > 1 ? `powers ${recorder.name} · ` : '';
  const caution = lead.value.cautions.find((one) => one !== 'no-cord-rating');
  const lasts = runtime?.ok ? ` · battery ${hoursWords(runtime.value)}` : '';
  return (
    <Row
      mark={caution ? 'clash' : 'single'}
      title={run.name}
      under={`${powers}${figureWords(run.metres, 1)} m of AWG ${run.awg}, ${figureWords(run.volts, 1)} V${lasts}`}
      word={
        caution ? (
          <strong>{RUN_CAUTION_SHORT[caution]}</strong>
        ) : (
          `${figureWords(lead.value.loadVolts, 2)} V, ${figureWords(lead.value.dropPercent, 1)} % drop`
        )
      }
      onTap={onTap}
    />
  );
}
