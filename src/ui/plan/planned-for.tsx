import { answersNow } from '../../day/answers/answers.ts';
import { useDay } from '../frame/context.ts';
import { hrefOf } from '../frame/route.ts';
import { listOf } from '../words/chain.ts';
import { recorderName, rollingRigs } from '../words/recorder-names.ts';

/** Which of several recorders the setup is planned for, in which order, and where it goes to others. */
export function PlannedFor() {
  const day = useDay().day.value;
  const [main, ...backups] = rollingRigs(answersNow(day)).map(({ recorder }) => recorderName(day, recorder));
  return (
    <p class="section">
      On {main}, the main recorder{backups.length > 0 && `, then on ${listOf(backups)}`}.{' '}
      <a href={hrefOf({ at: 'day', day: day.id, tab: 'unit' })}>Move the unit</a>
    </p>
  );
}
