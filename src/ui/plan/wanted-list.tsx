import { useState } from 'preact/hooks';
import { answersNow } from '../../day/answers.ts';
import { pinsOf } from '../../day/links.ts';
import type { Day, Voice, VoiceId } from '../../day/model.ts';
import type { Plan } from '../../plan/plan-next-setup.ts';
import type { PlanProblem } from '../../plan/plan-problem.ts';
import { whatIf } from '../../plan/what-if.ts';
import { Row } from '../parts/row.tsx';
import { nameOf } from '../words/chain.ts';
import { pinWords } from '../words/facts.ts';
import { whatIfWords } from '../words/plan.ts';

interface WantedListProps {
  readonly day: Day;
  readonly cast: readonly Voice[];
  readonly wanted: ReadonlySet<VoiceId>;
  readonly problem: PlanProblem;
  readonly plan: Plan | null;
  readonly onToggle: (voice: VoiceId) => void;
  readonly onPin: (voice: VoiceId) => void;
}

/** Who is needed next: one tap each, and for everybody else what it would cost to have them too. */
export function WantedList({ day, cast, wanted, problem, plan, onToggle, onPin }: WantedListProps) {
  const [asked, setAsked] = useState<VoiceId | null>(null);
  const { links } = answersNow(day);
  const answer = (voice: VoiceId): string => {
    const what = plan ? whatIf(problem, voice, plan) : null;
    return what?.ok ? whatIfWords(day, what.value) : '';
  };
  return (
    <>
      <h2 class="section-title">Who is needed</h2>
      <ul class="rows">
        {cast.map(({ id }) => {
          const pins = pinsOf(links, id)?.value;
          const isWanted = wanted.has(id);
          return (
            <li key={id} class="plan-voice">
              <Row
                mark={isWanted ? 'single' : 'free'}
                title={nameOf(day, id)}
                under={
                  asked === id && !isWanted
                    ? `if needed too: ${answer(id)}`
                    : pins
                      ? `keeps ${pinWords(day, pins)}`
                      : ''
                }
                word={isWanted ? 'needed' : ''}
                pressed={isWanted}
                onTap={() => onToggle(id)}
              />
              {isWanted ? (
                <button type="button" onClick={() => onPin(id)} aria-label={`Pin ${nameOf(day, id)}`}>
                  pin
                </button>
              ) : (
                <button
                  type="button"
                  onClick={() => setAsked(id)}
                  aria-label={`What if ${nameOf(day, id)} were needed too`}
                >
                  what if
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}
