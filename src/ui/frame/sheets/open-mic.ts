import { lazy } from '../../kit/lazy.tsx';

export const MicSheet = lazy(() => import('./mic-sheet.tsx').then((part) => part.MicSheet));
