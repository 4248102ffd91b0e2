import type { Need } from '../../day/model.ts';

/** Whether somebody is wanted in a setup, as said on set. */
export const NEED_WORD: Readonly<Record<Need, string>> = {
  needed: 'needed',
  resting: 'not in this setup',
  done: 'wrapped',
};
