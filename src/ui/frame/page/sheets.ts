import { lazy } from '../../kit/lazy.tsx';

// The first load carries the day's first screen. Its sheets follow right after, before anybody can tap.
export const TrackSheet = lazy(() => import('../sheets/track-sheet.tsx').then((part) => part.TrackSheet));
export const VoiceSheet = lazy(() => import('../sheets/voice-sheet.tsx').then((part) => part.VoiceSheet));
export const SlateSheet = lazy(() => import('../sheets/slate-sheet.tsx').then((part) => part.SlateSheet));
export const TakeSheet = lazy(() => import('../sheets/take-sheet.tsx').then((part) => part.TakeSheet));
export const NoteSheet = lazy(() => import('../sheets/note-sheet.tsx').then((part) => part.NoteSheet));
export const ClockSheet = lazy(() => import('../sheets/clock-sheet.tsx').then((part) => part.ClockSheet));
export const DaySheet = lazy(() => import('../sheets/day-sheet.tsx').then((part) => part.DaySheet));
export const ConflictSheet = lazy(() =>
  import('../sheets/conflict-sheet.tsx').then((part) => part.ConflictSheet),
);
