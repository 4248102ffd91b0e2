import { useState } from 'preact/hooks';
import type { DayPlan } from '../../radio/day/day-plan.ts';
import { namedHits } from '../../radio/day/named-hits.ts';
import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { useDay } from '../frame/context.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { carrierWords, FAMILY_NAME, hitWords } from './words.ts';

const SHOWN_AT_FIRST = 4;

interface HitsProps {
  readonly analysis: Analysis;
  readonly plan: DayPlan;
  readonly onPack: (id: string) => void;
}

/** Every hit by name: who is hit, by what, how close; packs being worn come first. */
export function Hits({ analysis, plan, onPack }: HitsProps) {
  const day = useDay().day.value;
  const [all, setAll] = useState(false);
  const hits = namedHits(analysis, plan);
  const shown = all ? hits : hits.slice(0, SHOWN_AT_FIRST);
  const nameOfCarrier = (id: string): string => plan.all.find((one) => one.id === id)?.name ?? id;
  if (hits.length === 0 && analysis.edgeHits.length === 0)
    return <Cautions of={plan.carriers.length > 1 ? ['clear-of-hits', 'radio'] : ['radio']} />;
  return (
    <>
      <ul class="rows">
        {analysis.edgeHits.map(({ carrierId, blockName, distanceKhz }) => (
          <li key={`${carrierId}${blockName}`}>
            <Row
              mark="clash"
              title={nameOfCarrier(carrierId)}
              under={
                distanceKhz === 0
                  ? `is in ${blockName}, which is in use here`
                  : `${distanceKhz} kHz from ${blockName}; the minimum is ${analysis.guards.tvEdgeKhz}`
              }
              word="in use"
              onTap={() => onPack(carrierId)}
            />
          </li>
        ))}
        {shown.map((named, at) => (
          <li key={at}>
            <Row
              mark={named.victim.voice ? 'clash' : 'idle'}
              title={carrierWords(day, named.victim)}
              under={hitWords(named, analysis.guards)}
              word={
                <>
                  {named.victim.voice && <strong>worn</strong>}
                  {FAMILY_NAME[named.hit.family]}
                </>
              }
              onTap={() => onPack(named.victim.id)}
            />
          </li>
        ))}
      </ul>
      {hits.length > shown.length && (
        <Button look="bare" class="prep-more" onClick={() => setAll(true)}>
          Show all {hits.length} hits
        </Button>
      )}
      {all && !analysis.listIsComplete && (
        <p class="section soft">
          There are more; only the nearest of each kind are listed. The counts are exact.
        </p>
      )}
      <Cautions of={['radio']} />
    </>
  );
}
