/** Common complaints about a take (common practice, no source). */
export const USUAL_COMPLAINTS = [
  'plane',
  'traffic',
  'clothing rustle',
  'mic rub',
  'radio hit',
  'dropout',
  'wind',
  'generator hum',
  'camera noise',
  'footsteps',
  'overlap',
  'off mic',
  'distorted',
  'crew noise',
  'phone',
] as const;
