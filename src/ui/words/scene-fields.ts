/** What a call sheet says of a scene beside its cast, as forms ask for it. */
export const SCENE_FIELDS = [
  { field: 'number', label: 'Scene', longest: 20 },
  { field: 'intExt', label: 'INT or EXT', longest: 20 },
  { field: 'set', label: 'Set', longest: 200 },
  { field: 'dayNight', label: 'Day or night', longest: 40 },
  { field: 'pages', label: 'Pages', longest: 20 },
  { field: 'crowd', label: 'Background', longest: 200 },
  { field: 'synopsis', label: 'Synopsis', longest: 4000 },
] as const;
export type SceneField = (typeof SCENE_FIELDS)[number]['field'];
