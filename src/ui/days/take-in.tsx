import { useState } from 'preact/hooks';
import type { DayImport, Stands } from '../../app/import/import-days.ts';
import type { FileRead, Regained } from '../../app/regain.ts';
import { useApp } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { goTo } from '../frame/route.ts';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { titleOf } from '../words/day-outline.ts';
import { AtTheDoor } from './at-the-door.tsx';
import { ChooseFile } from './choose-file.tsx';
import { damageWords, regainedWords } from './regained-words.ts';

interface TakeInProps {
  /** What came from outside the app: it need not be chosen. */
  readonly brought?: DayImport;
  readonly onClose: () => void;
}

/**
 * The one way in for day files, one or many, whether they were chosen, pasted, shared or opened with the app: says what
 * would change, and changes it when told to.
 */
export function TakeInSheet({ brought: given, onClose }: TakeInProps) {
  const [brought, setBrought] = useState(given ?? null);
  const [done, setDone] = useState<Done | null>(null);

  const takeIn = async (days: DayImport, stands?: Stands): Promise<void> => {
    const taken = await days.takeIn(stands);
    if (!taken.ok) return complain(taken.problem);
    const regained = taken.value;
    const { reads } = days;
    const [day] = regained.days;
    if (reads.length > 1 || reads.some(({ damage }) => damage) || !day) return setDone({ reads, regained });
    tell(
      `${countOf(regained.fresh, 'new entry', 'new entries')}, ${regained.entries - regained.fresh} known`,
    );
    goTo({ at: 'day', day, tab: 'now' });
  };
  if (done) return <TakenIn {...done} onClose={onClose} />;
  if (!brought) return <ChooseFile onBrought={setBrought} onClose={onClose} />;
  return <AtTheDoor brought={brought} onTakeIn={takeIn} onClose={onClose} />;
}

interface Done {
  readonly reads: readonly FileRead[];
  readonly regained: Regained;
}

/** What came of taking in several files, or a damaged one. */
function TakenIn({ reads, regained, onClose }: Done & { onClose: () => void }) {
  const { days } = useApp();
  return (
    <Sheet title="Taken in" under={regainedWords(reads, regained)} onClose={onClose}>
      <ul class="rows">
        {reads.map((one) => (
          <li key={one.name}>
            <Row mark={one.damage ? 'broken' : 'single'} title={one.name} under={damageWords(one)} />
          </li>
        ))}
        {days.value
          .filter(({ id }) => regained.days.includes(id))
          .map((day) => (
            <li key={day.id}>
              <Row
                title={titleOf(day)}
                under="taken in"
                word="open"
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'now' })}
              />
            </li>
          ))}
      </ul>
    </Sheet>
  );
}
