import type { Draft } from '../src/facts/fact.ts';
import type { PartFields } from '../src/facts/kinds/part-described.ts';

/** What a generated day has to play with. */
export interface Prep {
  /** One fact each, in the order in which they are said. */
  readonly drafts: readonly Draft[];
  readonly packs: readonly string[];
  readonly performers: readonly string[];
  readonly inputs: readonly string[];
  readonly isos: readonly string[];
}

export interface PrepSize {
  readonly tracks: number;
  readonly performers: number;
  readonly date: string;
  readonly label: string;
}

const numbered = (prefix: string, count: number, from = 1): string[] =>
  Array.from({ length: count }, (_, at) => `${prefix}${at + from}`);

/**
 * The rig and the cast of a generated day. Track 1 is the mix, track 2 a boom; each further track has an input, an
 * output, a receiver channel and a pack of its own. The first performers wear the packs.
 */
export function prepOf({ tracks, performers, date, label }: PrepSize): Prep {
  const isos = numbered('tr', tracks - 1, 2);
  const inputs = isos.map((track) => track.replace('tr', 'in'));
  const radio = tracks - 2;
  const packs = numbered('P', radio);
  const voices = numbered('v', performers);
  const drafts: Draft[] = [
    {
      kind: 'day-described',
      fields: { production: 'Generated', label, date, timecodeRate: '25', sample: true },
    },
    { kind: 'rig-laid', parts: partsOf(isos, inputs, packs) },
    { kind: 'inputs-sent', routes: inputs.map((input, at) => ({ input, tracks: [isos[at]!] })) },
    { kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom', priority: 400 } },
    ...voices.map((voice, at): Draft => {
      const fields = { part: `Part ${at + 1}`, number: `${at + 1}`, priority: Math.min(499, at + 1) };
      return { kind: 'voice-described', voice, fields };
    }),
    { kind: 'leads-plugged', leads: leadsOf(inputs) },
    { kind: 'roll-changed', roll: 'G1' },
  ];
  if (radio > 0) {
    const tunings = packs.map((transmitter, at) => ({ channel: `ch${at + 1}`, transmitter }));
    drafts.push({ kind: 'channels-tuned', tunings });
  }
  for (const [at, transmitter] of packs.slice(0, performers).entries())
    drafts.push({ kind: 'transmitter-worn', transmitter, voice: voices[at]! });
  return { drafts, packs, performers: voices, inputs, isos };
}

const leadsOf = (inputs: readonly string[]) =>
  inputs.map((to, at) => ({ lead: `lead${at}`, from: at === 0 ? 'boom' : `out${at}`, to }));

interface SaidPart {
  part: string;
  fields: PartFields;
}

const partsOf = (
  isos: readonly string[],
  inputs: readonly string[],
  packs: readonly string[],
): SaidPart[] => [
  { part: 'tr1', fields: { type: 'track', name: 'Mix', order: 0, mix: true, tap: 'post' } },
  { part: 'rx', fields: { type: 'receiver', name: 'receiver', place: 'cart' } },
  ...isos.map(
    (part, at): SaidPart => ({ part, fields: { type: 'track', name: `${at + 2}`, order: at + 1 } }),
  ),
  ...inputs.map(
    (part, at): SaidPart => ({ part, fields: { type: 'input', name: `in ${at + 1}`, order: at } }),
  ),
  ...packs.flatMap((part, at): SaidPart[] => {
    const own = { name: `receiver ${at + 1}`, receiver: 'rx', order: at };
    return [
      { part, fields: { type: 'transmitter', name: part, wear: 'pack', order: at } },
      { part: `ch${at + 1}`, fields: { ...own, type: 'channel' } },
      { part: `out${at + 1}`, fields: { ...own, type: 'output', carries: [`ch${at + 1}`] } },
    ];
  }),
];
