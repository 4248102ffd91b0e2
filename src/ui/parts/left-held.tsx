import type { LeftDay } from '../../app/left-held.ts';
import type { DayId } from '../../facts/envelope.ts';
import { useApp } from '../context.ts';
import { later } from './later.tsx';

const LeftHeldOffer = later(() => import('./left-held-offer.tsx').then((part) => part.LeftHeldOffer));

/** Room for what was held when a window was closed: of one day, or of all. */
export function LeftHeld({ day, onTaken }: { day?: DayId; onTaken?: (day: DayId) => void }) {
  const { days } = useApp().left;
  const shown = days.value.filter((left: LeftDay) => day === undefined || left.day === day);
  return (
    <>
      {shown.map((left) => (
        <LeftHeldOffer key={left.day} left={left} isNamed={day === undefined} onTaken={onTaken} />
      ))}
    </>
  );
}
