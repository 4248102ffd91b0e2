import { lazy } from '../../kit/lazy.tsx';
import { useApp, useDay } from '../context.ts';

const SavingTrouble = lazy(() => import('./saving-trouble.tsx').then((part) => part.SavingTrouble));

/** What is wrong with saving, in full; the head only says that something is. */
export function SavingBanner() {
  const { saving, damaged, unsure } = useDay();
  const { kept } = useApp().parts.journal.state;
  const { state, restored } = saving.value;
  const isFine = kept && state !== 'not-saved' && restored === 0 && damaged.value + unsure.value === 0;
  return isFine ? null : <SavingTrouble />;
}
