import type { DayId } from '../../../day/model.ts';
import { lazy } from '../../kit/lazy.tsx';
import { useApp } from '../context.ts';

const UnsavedOffer = lazy(() => import('./unsaved-offer.tsx').then((part) => part.UnsavedOffer));

interface Props {
  /** This day only; all days if not given. */
  readonly day?: DayId;
  /** By default only where all days are shown. */
  readonly isNamed?: boolean;
  readonly onRestored?: (day: DayId) => void;
}

/** Where actions left by closed windows are offered. */
export function Unsaved({ day, isNamed = day === undefined, onRestored }: Props) {
  const { days } = useApp().unsaved;
  const shown = days.value.filter((left) => day === undefined || left.day === day);
  return (
    <>
      {shown.map((left) => (
        <UnsavedOffer key={left.day} left={left} isNamed={isNamed} onRestored={onRestored} />
      ))}
    </>
  );
}
