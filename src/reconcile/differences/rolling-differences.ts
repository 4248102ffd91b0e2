import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';

/** Takes that are on a recorder's card and not logged as on it, or the other way round. */
export const rollingDifferences = ({ match }: Checking): Found[] =>
  match.rolledOtherwise.map(
    ({ recorder, isOn, takes }): Found => ({
      code: 'rolling-differs',
      recorder,
      aspect: `${recorder} ${isOn}`,
      was: !isOn,
      is: isOn,
      detail: { takes },
      settlements: [{ kind: 'correct-rolling', recorder, takes, isOn }],
    }),
  );
