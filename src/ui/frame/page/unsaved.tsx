import type { DayId } from '../../../day/model.ts';
import { lazy } from '../../kit/lazy.tsx';
import { useApp } from '../context.ts';

const UnsavedOffer = lazy(() => import('./unsaved-offer.tsx').then((part) => part.UnsavedOffer));

interface Props {
  /** Of this day; of all days unless told. */
  readonly day?: DayId;
  /** Unless told, only where all days are shown. */
  readonly isNamed?: boolean;
  readonly onRestored?: (day: DayId) => void;
}

/** Room for what was held when a window was closed. */
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
