import type { Draft } from '../../src/facts/fact.ts';
import { type Speaker, speaker, take } from './say.ts';

const upTo = (count: number): number[] => Array.from({ length: count }, (_, at) => at + 1);

/** The parts of 24 performers: short and long names, in several scripts. */
export const BIG_CAST = [
  ...['Wiktoria', 'Rozália', 'Conductor', 'Siân', 'Ксенија', 'Stoker', 'Judge Havlík', 'Zuzu'],
  ...['Dr Brandão', 'Old Tibor', 'Emil', 'Otto', 'The lamplighter’s widow', 'Young Tibor', 'Porter', 'Nell'],
  ...['Councillor Ferreira', 'Ida', 'Marek', 'Fireman', 'Orsolya', 'Usher', 'Bride', 'Twin'],
];

const PACKS = 22;

const parts: Extract<Draft, { kind: 'rig-laid' }>['parts'] = [
  { part: 'tr1', fields: { type: 'track', name: '1', mix: true, tap: 'post' } },
  ...upTo(31).map((n) => ({ part: `tr${n + 1}`, fields: { type: 'track' as const, name: `${n + 1}` } })),
  ...upTo(2).map((n) => ({
    part: `in${n}`,
    fields: { type: 'input' as const, name: `in ${n}`, inputKind: 'mic' as const },
  })),
  ...upTo(24).map((n) => ({
    part: `line${n}`,
    fields: { type: 'input' as const, name: `line ${n}`, inputKind: 'line' as const },
  })),
  { part: 'far', fields: { type: 'receiver', name: 'far box', place: 'remote' } },
  ...upTo(24).flatMap((n) => [
    { part: `far${n}`, fields: { type: 'channel' as const, name: `far ${n}`, receiver: 'far' } },
    {
      part: `out${n}`,
      fields: {
        type: 'output' as const,
        name: `out ${n}`,
        receiver: 'far',
        outputKind: 'analogue' as const,
        carries: [`far${n}`],
      },
    },
  ]),
  ...upTo(PACKS).map((n) => ({
    part: `A${n}`,
    fields: { type: 'transmitter' as const, name: `A${n}`, wear: 'pack' as const },
  })),
  {
    part: 'sel3',
    fields: { type: 'selector', name: 'selector 3', input: 'line3', positions: ['cart', 'far box'] },
  },
];

/**
 * A day of 24 performers on 22 packs, two of them needed and without one; two booms; Fireman and Orsolya ganged on
 * track 24, Marek and Usher clashing on track 22 since 45A/1, tracks 23 and 25 free; a selector before line 3; twelve
 * takes.
 */
export function bigDay(): Speaker {
  const phone = speaker();
  phone.say({ kind: 'rig-laid', parts });
  for (const [at, part] of BIG_CAST.entries()) {
    const fields = { part, number: `${at + 1}`, priority: at + 1 };
    phone.say({ kind: 'voice-described', voice: `v${at + 1}`, fields });
  }
  phone.say(
    { kind: 'voice-described', voice: 'boom1', fields: { kind: 'boom', part: 'Boom Jurrien', priority: 30 } },
    { kind: 'voice-described', voice: 'boom2', fields: { kind: 'boom', part: 'Boom Saskia', priority: 31 } },
    {
      kind: 'inputs-sent',
      routes: [
        ...upTo(2).map((n) => ({ input: `in${n}`, tracks: [`tr${n + 1}`] })),
        ...upTo(24).map((n) => ({ input: `line${n}`, tracks: [`tr${n + 3}`] })),
      ],
    },
    {
      kind: 'leads-plugged',
      leads: [
        ...upTo(PACKS).map((n) => ({ lead: `l${n}`, from: `out${n}`, to: `line${n}` })),
        ...upTo(2).map((n) => ({ lead: `b${n}`, from: `boom${n}`, to: `in${n}` })),
      ],
    },
    {
      kind: 'channels-tuned',
      tunings: upTo(PACKS).map((n) => ({ channel: `far${n}`, transmitter: `A${n}` })),
    },
    { kind: 'voices-needed', voices: upTo(24).map((n) => ({ voice: `v${n}`, need: 'needed' })) },
  );
  for (const n of upTo(PACKS)) phone.say({ kind: 'transmitter-worn', transmitter: `A${n}`, voice: `v${n}` });
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'line20', tracks: ['tr24'] }] });
  phone.say({ kind: 'gang-declared', track: 'tr24', sources: ['far20', 'far21'] });
  for (const number of upTo(6)) phone.say(take('44', 0, number));
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'line22', tracks: ['tr22'] }] });
  for (const number of upTo(6)) phone.say(take('45', 1, number));
  return phone;
}
