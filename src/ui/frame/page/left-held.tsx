import type { DayId } from '../../../day/model.ts';
import { lazy } from '../../kit/lazy.tsx';
import { useApp } from '../context.ts';

const LeftHeldOffer = lazy(() => import('./left-held-offer.tsx').then((part) => part.LeftHeldOffer));

interface Props {
  /** Of this day; of all days unless told. */
  readonly day?: DayId;
  /** Unless told, only where all days are shown. */
  readonly isNamed?: boolean;
  readonly onTaken?: (day: DayId) => void;
}

/** Room for what was held when a window was closed. */
export function LeftHeld({ day, isNamed = day === undefined, onTaken }: Props) {
  const { days } = useApp().left;
  const shown = days.value.filter((left) => day === undefined || left.day === day);
  return (
    <>
      {shown.map((left) => (
        <LeftHeldOffer key={left.day} left={left} isNamed={isNamed} onTaken={onTaken} />
      ))}
    </>
  );
}
