import { lazy } from '../../kit/lazy.tsx';

/** The reader of call sheets is larger than the rest of the cast, and wanted once a day. */
export const CallSheetImport = lazy(() => import('./call-sheet.tsx').then((part) => part.CallSheetImport));
