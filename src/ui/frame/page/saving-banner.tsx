import { lazy } from '../../kit/lazy.tsx';
import { useApp, useDay } from '../context.ts';

const SavingTrouble = lazy(() => import('./saving-trouble.tsx').then((part) => part.SavingTrouble));

/** Room for what is wrong with keeping the day. The head says shortly that something is; the words come here. */
export function SavingBanner() {
  const { saving, damaged, unsure } = useDay();
  const { kept } = useApp().parts.journal.state;
  const { state, restored } = saving.value;
  const isFine = kept && state !== 'not-saved' && restored === 0 && damaged.value + unsure.value === 0;
  return isFine ? null : <SavingTrouble />;
}
