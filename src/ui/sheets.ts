import { later } from './parts/later.tsx';

// The first load carries the day's first screen. Its sheets come right after, before anybody can have tapped.
export const TrackSheet = later(() => import('./sheets/track-sheet.tsx').then((part) => part.TrackSheet));
export const VoiceSheet = later(() => import('./sheets/voice-sheet.tsx').then((part) => part.VoiceSheet));
export const SlateSheet = later(() => import('./sheets/slate-sheet.tsx').then((part) => part.SlateSheet));
export const TakeSheet = later(() => import('./sheets/take-sheet.tsx').then((part) => part.TakeSheet));
export const NoteSheet = later(() => import('./sheets/note-sheet.tsx').then((part) => part.NoteSheet));
export const ClockSheet = later(() => import('./sheets/clock-sheet.tsx').then((part) => part.ClockSheet));
export const DaySheet = later(() => import('./sheets/day-sheet.tsx').then((part) => part.DaySheet));
export const ConflictSheet = later(() =>
  import('./sheets/conflict-sheet.tsx').then((part) => part.ConflictSheet),
);
