import { formatSeconds } from '../../../time/length.ts';

/** Time since an open take rolled, in whole seconds: `0:42`. */
export const elapsed = (ms: number): string => formatSeconds(Math.max(0, Math.floor(ms / 1000)));
