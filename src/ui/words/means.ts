import type { MarkState } from '../kit/mark.tsx';

/** What each mark and its word mean, in one sentence: shown beside them and on the help page. */
export const MARK_MEANS = {
  single: { word: 'alone', means: 'One voice is on the track, and nobody else.' },
  gang: { word: 'gang', means: 'Several live sources share one track, on purpose.' },
  clash: {
    word: 'clash',
    means: 'Several live sources share one track, and it is not marked as on purpose.',
  },
  muted: { word: 'muted', means: 'Somebody is on it, and is not heard for now.' },
  broken: { word: 'not recorded', means: 'Somebody is expected and is on no track.' },
  free: { word: 'free', means: 'Nothing reaches this input: it can take a lead.' },
  idle: { word: 'idle', means: 'A source reaches this input and nobody is on it.' },
  reserved: { word: 'reserved', means: 'Kept for timecode, comms or playback: not for voices.' },
} as const satisfies Partial<Record<MarkState, { readonly word: string; readonly means: string }>>;
