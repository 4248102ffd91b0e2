import type { Planning } from '../../app/planner.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { allPins } from '../../day/chain/pins.ts';
import type { Day, PartId, Voice, VoiceId } from '../../day/model.ts';
import { Button } from '../kit/button.tsx';
import { isReadOnly } from '../kit/reads-only.ts';
import { Row } from '../kit/row.tsx';
import { listOf, nameOf } from '../words/chain.ts';
import { pinWords } from '../words/facts.ts';
import { recorderName } from '../words/recorder-names.ts';
import { whatIfWords } from './words.ts';

interface WantedListProps {
  readonly day: Day;
  readonly cast: readonly Voice[];
  readonly wanted: ReadonlySet<VoiceId>;
  readonly whatIf: Planning['whatIf'];
  /** The main recorder where others are planned too: what if is answered for it. */
  readonly on: PartId | undefined;
  readonly onToggle: (voice: VoiceId) => void;
  readonly onWhatIf: (voice: VoiceId) => void;
  readonly onPin: (voice: VoiceId) => void;
}

const keptWords = (day: Day, pins: ReturnType<typeof allPins>, main: PartId | undefined): string =>
  listOf(pins.flatMap((one) => pinWords(day, one.pins, one.recorder ?? main)));

/** Who is needed next: one tap each, and for everybody else what adding them would cost. */
export function WantedList({ day, cast, wanted, whatIf, on, onToggle, onWhatIf, onPin }: WantedListProps) {
  const { links } = answersNow(day);
  const answered = whatIf?.answer ? whatIfWords(day, whatIf.answer) : 'this cannot be planned';
  const answer = `if needed too${on ? `, on ${recorderName(day, on)}` : ''}: ${whatIf?.isLooking ? 'working it out…' : answered}`;
  return (
    <>
      <h2 class="section-title">Who is needed</h2>
      <ul class="rows">
        {cast.map(({ id }) => {
          const pins = allPins(day.rig, links, id);
          const isWanted = wanted.has(id);
          return (
            <li key={id} class="plan-voice">
              <Row
                mark={isWanted ? 'single' : 'free'}
                title={nameOf(day, id)}
                under={
                  whatIf?.voice === id && !isWanted
                    ? answer
                    : pins.length > 0
                      ? `keeps ${keptWords(day, pins, on)}`
                      : ''
                }
                word={isWanted ? 'needed' : ''}
                pressed={isWanted}
                onTap={isReadOnly.value ? undefined : () => onToggle(id)}
              />
              {isWanted ? (
                !isReadOnly.value && (
                  <Button look="bare" onClick={() => onPin(id)} label={`Pin ${nameOf(day, id)}`}>
                    pin
                  </Button>
                )
              ) : (
                <Button
                  look="bare"
                  onClick={() => onWhatIf(id)}
                  label={`What if ${nameOf(day, id)} were needed too`}
                >
                  what if
                </Button>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}
