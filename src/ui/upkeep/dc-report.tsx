import { type DayRun, dcRun } from '../../upkeep/wiring/day-runs.ts';
import { fuseLimit } from '../../upkeep/wiring/direct-current.ts';
import { sentenceFor } from '../words/problems.ts';
import { figureWords, hoursWords, RUN_CAUTION_WORDS } from './words.ts';

/** A DC lead on the cart, computed: volts at the device, the drop, and how long the battery lasts. */
export function DcReport({ run }: { run: DayRun }) {
  const { lead, runtime } = dcRun(run);
  if (!lead.ok) return <p class="problem">{sentenceFor(lead.problem)}</p>;
  const { loadVolts, dropVolts, dropPercent, amps, lossWatts, cautions } = lead.value;
  const fuse = fuseLimit({ awg: run.awg });
  return (
    <>
      {cautions.map((caution) => (
        <p key={caution} class={caution === 'no-cord-rating' ? 'section soft' : 'problem'}>
          {RUN_CAUTION_WORDS[caution]}.
        </p>
      ))}
      <dl class="figures">
        <dt>At the device</dt>
        <dd>
          {figureWords(loadVolts, 2)} V, {figureWords(amps, 2)} A
        </dd>
        <dt>Drop</dt>
        <dd>
          {figureWords(dropVolts, 2)} V, {figureWords(dropPercent, 1)} %, {figureWords(lossWatts, 1)} W lost
        </dd>
        {fuse.ok && (
          <>
            <dt>Fuse at the battery</dt>
            <dd>
              {figureWords(fuse.value.amps, 0)} A at most for this wire; less if the connector or device is
              rated lower
            </dd>
          </>
        )}
        {runtime && (
          <>
            <dt>Battery lasts</dt>
            <dd>
              {runtime.ok
                ? `${hoursWords(runtime.value)}, with 80 % of its rating (common practice, no source) and the loss in the lead`
                : sentenceFor(runtime.problem)}
            </dd>
          </>
        )}
      </dl>
    </>
  );
}
