import { reinstateVoice } from '../../app/commands/cast.ts';
import type { Voice } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Row } from '../kit/row.tsx';
import { nameOf } from '../words/chain.ts';
import { behindWords } from '../words/voice.ts';

/** Those removed from the cast; a tap brings one back. */
export function StruckList({ struck }: { struck: readonly Voice[] }) {
  const day = useDay().day.value;
  const run = useRun();
  if (struck.length === 0) return null;
  return (
    <section class="cast-struck">
      <h2 class="section-title soft">Removed from cast</h2>
      <ul class="rows rows-two">
        {struck.map((voice) => {
          const name = nameOf(day, voice.id);
          return (
            <li key={voice.id}>
              <Row
                number={voice.number}
                title={<s>{name}</s>}
                under={behindWords(voice)}
                word="bring back"
                onTap={() => run(reinstateVoice(voice.id), `${name} back in the cast`)}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
