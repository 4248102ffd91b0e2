import { micsKnownOf } from '../../day/chain/mics.ts';
import type { Day } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';

/** The mics of everybody in the cast as they were last, for the next day. */
export const micsAlong = (day: Day): Draft[] =>
  [...day.voices.values()]
    .filter(({ struck }) => !struck)
    .flatMap(({ id: voice }) =>
      [...micsKnownOf(day.tail, voice)]
        .filter(([pack]) => pack === null || day.rig.byId.has(pack))
        .map(
          ([transmitter, { carried: _, ...mic }]): Draft => ({
            kind: 'mic-mounted',
            voice,
            transmitter,
            mic: Object.fromEntries(Object.entries(mic).filter(([, text]) => text !== '')),
            carried: true,
          }),
        ),
    );
