import { type Mic, micListed } from '../../day/chain/mics.ts';
import type { Day, FactOf, MicField } from '../../day/model.ts';
import { nameOf, partName } from './chain.ts';

/** A mic in one line: `black omni lavalier, chest, rubs on necklace`. */
export const micWords = (mic: Omit<Mic, 'carried'>): string =>
  [...micListed(mic), ...(mic.rubs ? [`rubs on ${mic.rubs}`] : [])].join(', ');

const NOTHING = { model: '', colour: '', place: '', cable: '', rubs: '' };

/** What somebody said of a mic. */
export function mountedWords(day: Day, { voice, transmitter, mic, carried }: FactOf<'mic-mounted'>): string {
  const said = Object.fromEntries(Object.entries(mic).map(([field, text]) => [field, text ?? '']));
  const words = micWords({ ...NOTHING, ...said } as Record<MicField, string>);
  const what = words || (Object.keys(mic).length > 0 ? 'no longer as it was' : 'as yesterday');
  const on = transmitter ? ` on ${partName(day.rig, transmitter)}` : '';
  return `mic of ${nameOf(day, voice)}${on}: ${what}${carried ? ', as yesterday' : ''}`;
}

export const MIC_FIELD_WORD: Record<MicField, string> = {
  place: 'Where',
  colour: 'Colour',
  model: 'Model',
  cable: 'Cable',
  rubs: 'Rubs on',
};

/** Usual answers, offered as taps. */
const USUAL: Record<MicField, readonly string[]> = {
  place: ['chest', 'collar', 'tie', 'placket', 'bra', 'strap', 'hair', 'hat', 'glasses', 'on the skin'],
  colour: ['black', 'white', 'beige', 'brown', 'grey'],
  model: ['omni lavalier', 'cardioid lavalier', 'headset'],
  cable: ['down the front', 'down the back', 'round the waist', 'taped', 'with a loop'],
  rubs: ['shirt', 'jacket', 'tie', 'necklace', 'zip', 'hair', 'seat belt'],
};

/** The most offered for one field. */
const OFFERED = 14;

/** What can be tapped: what is said now, what is on other bodies of the day, then what is usual. */
export function micOptions(day: Day, field: MicField, said: string): string[] {
  const used = [...day.tail]
    .filter(([name]) => name.startsWith(`mic:${field}:`))
    .flatMap(([, { value }]) => (typeof value === 'string' ? value : []));
  const usual = USUAL[field];
  const own = [...new Set([said, ...used])].filter((text) => text !== '' && !usual.includes(text));
  return [...own, ...usual].slice(0, OFFERED);
}
