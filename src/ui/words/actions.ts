import { formatMhz } from '../../app/commands/typed.ts';
import { mergeVoice } from '../../day/fold/parts-list.ts';
import {
  type Day,
  type Fact,
  type FactOf,
  isKnown,
  type Part,
  type Take,
  type UnknownFact,
  type Voice,
} from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { takeFrom } from '../../day/takes.ts';
import { countOf, listOf, nameOf, partName } from './chain.ts';
import { factWords } from './facts.ts';

/** Entries listed per action; a cast list has dozens. */
const TOLD = 2;
const FIELDS_TOLD = 3;
const LONGEST_NOTE = 60;

/** One action in words: `A3 on Anna`, or `24/1, cut of 24/1 and 3 more entries`. */
export function actionWords(day: Day, facts: readonly (Fact | UnknownFact)[]): string {
  const named = withAllNames(day);
  const words = facts.map((fact) =>
    isKnown(fact) ? entryWords(named, fact) : 'an entry of a newer version',
  );
  const told = [...new Set(words)].slice(0, TOLD);
  const more = words.filter((one) => !told.includes(one)).length;
  if (told.length === 0) return 'nothing';
  return listOf(more > 0 ? [...told, countOf(more, 'more entry', 'more entries')] : told);
}

/** What an undo removed or a redo restored, read from the retractions that did it. */
export function undoneWords(day: Day, said: readonly Fact[]): string {
  const facts = targetsOf(
    day,
    said.flatMap((fact) => (fact.kind === 'fact-retracted' ? fact.targets : [])),
  );
  // A redo retracts the undo, so it is described by what the undo had retracted.
  const isRedo = facts.some((fact) => fact.kind === 'fact-retracted' && fact.by === 'undo');
  return isRedo ? undoneWords(day, facts) : actionWords(day, facts);
}

function targetsOf(day: Day, ids: readonly string[]): Fact[] {
  const wanted = new Set(ids);
  return day.facts.filter(({ id }) => wanted.has(id));
}

/** An entry with its subject; on the line the subject is clear from where the entry stands. */
function entryWords(day: Day, fact: Fact): string {
  switch (fact.kind) {
    case 'take-logged':
      return `take ${nameOfTake(day, fact.id)}`;
    case 'note-added':
      return `note on ${nameOfTake(day, fact.take)}: ${shortened(fact.text)}`;
    case 'take-described':
      return correctionWords(nameOfTake(day, fact.take), fact.fields);
    case 'voice-described':
      return voiceWords(day, fact);
    case 'part-described':
      return partWords(day, fact);
    case 'day-described':
      return `day details: ${fieldWords(fact.fields, HEAD)}`;
    case 'fact-retracted': {
      const targets = targetsOf(day, fact.targets);
      const isBack = targets.some(({ kind }) => kind === 'fact-retracted');
      return isBack ? `${undoneByHand(day, targets)} brought back` : `${actionWords(day, targets)} removed`;
    }
    case 'fact-moved': {
      const words = actionWords(day, targetsOf(day, [fact.target]));
      return fact.to ? `${words} moved before ${nameOfTake(day, fact.to)}` : `${words} moved back`;
    }
    case 'takes-joined':
      return `${nameOfTake(day, fact.take)} and ${nameOfTake(day, fact.into)} as one take`;
    default:
      return factWords(day, fact);
  }
}

const undoneByHand = (day: Day, retractions: readonly Fact[]): string =>
  actionWords(
    day,
    targetsOf(
      day,
      retractions.flatMap((fact) => (fact.kind === 'fact-retracted' ? fact.targets : [])),
    ),
  );

function nameOfTake(day: Day, id: string): string {
  const take = day.takes.get(id);
  return take ? takeText(take) : 'a take';
}

/** As much of a note as a message has room for. */
export const shortened = (text: string): string =>
  text.length > LONGEST_NOTE ? `${text.slice(0, LONGEST_NOTE).trimEnd()}…` : text;

/** Fields set by one tap, each in its own words; corrections from the form come as a list. */
const TAPPED: Record<string, (name: string, on: unknown) => string> = {
  cutAt: (name) => `cut of ${name}`,
  circled: (name, on) => (on ? `${name} circled` : `${name} not circled`),
  noGood: (name, on) => (on ? `${name} NG` : `${name} not NG`),
  falseStart: (name, on) => (on ? `${name} a false start` : `${name} not a false start`),
  unit: (name, unit) => `${name} of the ${unit} unit`,
  tailSlate: (name, on) => (on ? `tail slate on ${name}` : `no tail slate on ${name}`),
};

const TAKE_FIELDS: Record<string, string> = {
  circled: 'circle',
  noGood: 'NG',
  falseStart: 'false start',
  tailSlate: 'tail slate',
  rolledAt: 'roll time',
  file: 'file name',
};

function correctionWords(name: string, fields: FactOf<'take-described'>['fields']): string {
  const said = Object.entries(fields);
  // Cut sets the length too.
  const [field, value] = said.find(([one]) => one === 'cutAt') ?? said[0] ?? ['', null];
  const tapped = TAPPED[field];
  if (tapped && (said.length === 1 || field === 'cutAt')) return tapped(name, value);
  return `${name} edited: ${fieldWords(fields, TAKE_FIELDS)}`;
}

/** The changed fields by name: the first few, and how many more. */
function fieldWords(fields: object, words: Readonly<Record<string, string>>): string {
  const all = Object.keys(fields).map((field) => words[field] ?? field);
  const more = all.length - FIELDS_TOLD;
  return listOf(more > 0 ? [...all.slice(0, FIELDS_TOLD), `${more} more`] : all);
}

const VOICE_FIELDS: Record<string, string> = {
  person: 'name',
  number: 'cast number',
  priority: 'order',
};

function voiceWords(day: Day, { id, voice, fields }: FactOf<'voice-described'>): string {
  const name = nameOf(day, voice);
  if (fields.struck !== undefined)
    return fields.struck ? `${name} removed from the cast` : `${name} back in the cast`;
  const first = day.facts.find((fact) => fact.kind === 'voice-described' && fact.voice === voice);
  if (!first || first.id === id) return `${name} added`;
  return `${name} edited: ${fieldWords(fields, VOICE_FIELDS)}`;
}

function partWords(day: Day, { id, part, fields }: FactOf<'part-described'>): string {
  const name = partName(day.rig, part);
  if (fields.struck !== undefined) return fields.struck ? `${name} deleted` : `${name} in the rig again`;
  const isHere = (fact: Fact): boolean =>
    fact.kind === 'rig-laid'
      ? fact.parts.some((one) => one.part === part)
      : fact.kind === 'part-described' && fact.part === part;
  const first = day.facts.find(isHere);
  if (!first || first.id === id) return `${name} added`;
  if (fields.khz) return `${name} on ${formatMhz(fields.khz)} MHz`;
  return `${name} ${fields.name === undefined ? 'edited' : 'renamed'}`;
}

const HEAD: Record<string, string> = {
  label: 'day',
  sampleRate: 'sample rate',
  bitDepth: 'bit depth',
  timecodeRate: 'timecode rate',
  fileLayout: 'kind of files',
  slateStyle: 'slates',
  filePattern: 'file names',
  mixerContact: 'how to reach the mixer',
  boomContact: 'how to reach the boom operator',
  utilityContact: 'how to reach the utility',
  tone: 'reference tone',
  toneRoll: 'roll of the tone',
  sample: 'sample day',
};

/** The day with removed and retracted names included, so that entries about them do not show bare ids. */
function withAllNames(day: Day): Day {
  const voices = new Map<string, Voice>();
  const parts = new Map<string, Part>();
  const takes = new Map<string, Take>();
  const devices = new Map(day.upkeep.devices);
  const addPart = ({ part, fields }: Pick<FactOf<'part-described'>, 'part' | 'fields'>): void => {
    const blank = { id: part, type: 'input', name: part, order: 0 };
    parts.set(part, { ...blank, ...parts.get(part), ...fields } as Part);
  };
  for (const fact of day.facts) {
    if (fact.kind === 'voice-described')
      voices.set(fact.voice, mergeVoice(voices.get(fact.voice), fact.voice, fact.fields));
    else if (fact.kind === 'part-described') addPart(fact);
    else if (fact.kind === 'rig-laid') fact.parts.forEach(addPart);
    else if (fact.kind === 'take-logged') takes.set(fact.id, takeFrom(fact));
    else if (fact.kind === 'devices-described')
      for (const device of fact.devices) if (!devices.has(device)) devices.set(device, fact.fields);
  }
  return {
    ...day,
    voices: new Map([...voices, ...day.voices]),
    takes: new Map([...takes, ...day.takes]),
    rig: { ...day.rig, byId: new Map([...parts, ...day.rig.byId]) },
    upkeep: { ...day.upkeep, devices },
  };
}
