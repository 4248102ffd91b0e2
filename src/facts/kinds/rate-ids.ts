/** Timecode rates (SMPTE ST 12-1:2014, scope; `DF` is drop-frame). */
export const RATE_IDS = [
  '23.976',
  '24',
  '25',
  '29.97',
  '29.97DF',
  '30',
  '30DF',
  '47.952',
  '48',
  '50',
  '59.94',
  '59.94DF',
  '60',
] as const;
