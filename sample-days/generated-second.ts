import type { Prep } from './generated-prep.ts';

const SECOND = 'second';

const onSecond = (part: string): string => `${SECOND}-${part}`;

/** The same rig with a second recorder beside the first: every lead goes to both, by a lead of its own, and both roll. */
export function withSecondRecorder(prep: Prep): Prep {
  const { inputs, isos } = prep;
  const own = { recorder: SECOND } as const;
  return {
    ...prep,
    drafts: [
      ...prep.drafts,
      {
        kind: 'rig-laid',
        parts: [
          { part: SECOND, fields: { type: 'recorder', name: 'Second' } },
          { part: onSecond('tr1'), fields: { ...own, type: 'track', name: 'Mix', mix: true, tap: 'post' } },
          ...isos.map((part, at) => ({
            part: onSecond(part),
            fields: { ...own, type: 'track' as const, name: `${at + 2}`, order: at + 1 },
          })),
          ...inputs.map((part, at) => ({
            part: onSecond(part),
            fields: { ...own, type: 'input' as const, name: `in ${at + 1}`, order: at },
          })),
        ],
      },
      {
        kind: 'inputs-sent',
        routes: inputs.map((input, at) => ({ input: onSecond(input), tracks: [onSecond(isos[at]!)] })),
      },
      {
        kind: 'leads-plugged',
        leads: inputs.map((to, at) => ({
          lead: `${SECOND}-lead${at}`,
          from: at === 0 ? 'boom' : `out${at}`,
          to: onSecond(to),
        })),
      },
      { kind: 'roll-changed', recorder: SECOND, roll: 'H1' },
      { kind: 'recorders-rolling', recorders: ['recorder', SECOND] },
    ],
  };
}
