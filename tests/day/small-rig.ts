import type { Draft } from '../../src/facts/fact.ts';

/** Four inputs on tracks 2 to 5 behind a mix track, a receiver of three channels, three packs, and one boom input. */
export const SMALL_RIG: Draft[] = [
  {
    kind: 'rig-laid',
    parts: [
      { part: 'tr1', fields: { type: 'track', name: '1', mix: true, tap: 'post' } },
      ...[2, 3, 4, 5].map((n) => ({ part: `tr${n}`, fields: { type: 'track' as const, name: `${n}` } })),
      { part: 'in1', fields: { type: 'input', name: 'in 1', inputKind: 'mic' } },
      ...[1, 2, 3].map((n) => ({
        part: `aes${n}`,
        fields: { type: 'input' as const, name: `AES ${n}`, inputKind: 'aes3' as const },
      })),
      { part: 'near', fields: { type: 'receiver', name: 'near', place: 'cart' } },
      ...[1, 2, 3].flatMap((n) => [
        { part: `near${n}`, fields: { type: 'channel' as const, name: `near ${n}`, receiver: 'near' } },
        {
          part: `near${n}out`,
          fields: {
            type: 'output' as const,
            name: `near ${n}`,
            receiver: 'near',
            outputKind: 'aes3' as const,
            carries: [`near${n}`],
          },
        },
        {
          part: `A${n}`,
          fields: { type: 'transmitter' as const, name: `A${n}`, wear: 'pack' as const },
        },
      ]),
    ],
  },
  {
    kind: 'inputs-sent',
    routes: [
      { input: 'in1', tracks: ['tr2'] },
      ...[1, 2, 3].map((n) => ({ input: `aes${n}`, tracks: [`tr${n + 2}`] })),
    ],
  },
  {
    kind: 'leads-plugged',
    leads: [1, 2, 3].map((n) => ({ lead: `l${n}`, from: `near${n}out`, to: `aes${n}` })),
  },
  { kind: 'channels-tuned', tunings: [1, 2, 3].map((n) => ({ channel: `near${n}`, transmitter: `A${n}` })) },
];

export const SMALL_CAST: Draft[] = [
  { kind: 'voice-described', voice: 'ines', fields: { part: 'Ines', number: '1', priority: 1 } },
  { kind: 'voice-described', voice: 'dora', fields: { part: 'Dora', number: '2', priority: 2 } },
  { kind: 'voice-described', voice: 'tomas', fields: { part: 'Tomas', number: '3', priority: 3 } },
  { kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom', priority: 4 } },
  { kind: 'leads-plugged', leads: [{ lead: 'boom', from: 'boom', to: 'in1' }] },
];
