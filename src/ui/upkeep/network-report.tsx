import type { Day } from '../../day/model.ts';
import { type DayRun, knownLeads, networkRun, streamsOf } from '../../upkeep/wiring/day-runs.ts';
import type { LeadLimit, NetworkLeadReport } from '../../upkeep/wiring/ethernet-power.ts';
import { sentenceFor } from '../words/problems.ts';
import { figureWords, LIMIT_SHORT, LIMIT_WORDS } from './words.ts';

const metresWords = (metres: number): string =>
  `${figureWords(metres, 0)} m (${figureWords(metres / 0.3048, 0)} ft)`;

/** A network lead to a remote box, computed: volts and watts, what fails first, and known good lengths. */
export function NetworkReport({ day, run }: { day: Day; run: DayRun }) {
  const { lead, deviceMinVolts, sound } = networkRun(day, run);
  if (!lead.ok) return <p class="problem">{sentenceFor(lead.problem)}</p>;
  const { broken, deviceWatts, loadVolts, amps, lossWatts, marginVolts, loopOhms } = lead.value;
  return (
    <>
      {broken.map((limit) => (
        <p key={limit} class="problem">
          {metresWords(run.metres)}: {LIMIT_WORDS[limit]}.
        </p>
      ))}
      <dl class="figures">
        {loadVolts !== undefined && (
          <>
            <dt>At the box</dt>
            <dd>
              {figureWords(loadVolts, 1)} V, {figureWords(deviceWatts, 1)} W, {figureWords(amps ?? 0, 2)} A
            </dd>
            <dt>Margin</dt>
            <dd>
              {figureWords(marginVolts ?? 0, 1)} V above the {figureWords(deviceMinVolts ?? 0, 1)} V a device
              of class {run.powerClass} must take
            </dd>
            <dt>Lost in the lead</dt>
            <dd>
              {figureWords(lossWatts ?? 0, 1)} W, loop {figureWords(loopOhms, 2)} Ω
            </dd>
          </>
        )}
        <dt>Fails first</dt>
        <dd>
          <Limits report={lead.value} />
        </dd>
        {sound && (
          <>
            <dt>Sound on it</dt>
            <dd>
              {sound.ok
                ? `${figureWords(sound.value.wireMbps, 1)} Mbit/s one way, ${figureWords(sound.value.percent, 0)} % of the link, ${streamsOf(day, run).length} streams`
                : sentenceFor(sound.problem)}
            </dd>
          </>
        )}
        <dt class="figures-wide">
          Cables that have powered a receiver box (common practice, no source), and what is worked out for
          them
        </dt>
        <dd class="figures-wide">
          {knownLeads(run).map(({ category, feet, metres, lead: known }) => (
            <span key={category} class="known-lead">
              {feet} ft ({figureWords(metres, 0)} m) of {category}
              {known.ok && known.value.loadVolts !== undefined
                ? `: ${figureWords(known.value.loadVolts, 1)} V`
                : ': cannot carry this load'}
            </span>
          ))}
        </dd>
      </dl>
    </>
  );
}

/** The nearest limit in full, the others by their lengths. */
function Limits({ report }: { report: NetworkLeadReport }) {
  const [first, ...rest] = report.limits;
  if (!first) return null;
  const later = rest.map(
    ({ limit, metres }: { limit: LeadLimit; metres: number }) =>
      `${LIMIT_SHORT[limit]} at ${metresWords(metres)}`,
  );
  return (
    <>
      {LIMIT_WORDS[first.limit]}, at {metresWords(first.metres)}
      <span class="soft limit-rest">then {later.join(', ')}</span>
    </>
  );
}
