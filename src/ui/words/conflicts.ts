import { saidOfLink } from '../../day/chain/said-of-link.ts';
import type { Day, Fact, FactId, Slate, Stamp, TakeId } from '../../day/model.ts';
import type { Conflict } from '../../day/phones/conflicts.ts';
import { type DescribedField, type FieldConflict, registersOf } from '../../day/phones/field-conflicts.ts';
import { startOfTake } from '../../day/settings/settings.ts';
import { slateText, takeText } from '../../day/slate.ts';
import { formatLength } from '../../time/length.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { listOf, nameOf, partName } from './chain.ts';
import { factWords } from './facts.ts';

const factOf = (day: Day, id: FactId): Fact | undefined => day.facts.find((fact) => fact.id === id);

/** What somebody entered for one link, in the words of the whole fact if it covers nothing else. */
export function saidWords(day: Day, id: FactId, link: string): string {
  const fact = factOf(day, id);
  return fact ? factWords(day, { ...fact, ...saidOfLink(fact, link) } as Fact) : '';
}

/** What a conflict is about, in a line that tells it from others of its kind. */
export function conflictTitle(day: Day, conflict: Conflict): string {
  switch (conflict.kind) {
    case 'link-conflict': {
      const [first] = conflict.by;
      const concerned = takesWords(day, conflict.takes);
      return `${saidWords(day, first!, conflict.link)}, or not${concerned && `: ${concerned}`}`;
    }
    case 'field-conflict':
      return `${thingWords(day, conflict)}: ${FIELD_WORDS[conflict.field] ?? conflict.field}`;
    case 'take-twice':
      return `${takeText(conflict.takes[0]!)} was logged ${conflict.takes.length === 2 ? 'twice' : `${conflict.takes.length} times`}`;
    case 'order-unsure':
      return `${changeWords(day, conflict.change)}: before ${nameOfTake(day, conflict.take)} or after it?`;
  }
}

/** A conflict as an open matter of the report, with every alternative. */
export function conflictWords(day: Day, conflict: Conflict): string {
  switch (conflict.kind) {
    case 'link-conflict': {
      const said = conflict.by.map((id) => saidWords(day, id, conflict.link));
      const concerned = takesWords(day, conflict.takes);
      return `Two phones differ: ${said.join(', or ')}${concerned && `, on ${concerned}`}`;
    }
    case 'field-conflict': {
      const said = conflict.by.map((id) => fieldWords(day, id, conflict));
      return `Two phones differ on ${thingWords(day, conflict)}: ${said.join(', or ')}`;
    }
    case 'order-unsure':
      return `Two phones logged these so close together that either could be first: ${changeWords(day, conflict.change)}, and ${nameOfTake(day, conflict.take)}`;
    case 'take-twice':
      return conflictTitle(day, conflict);
  }
}

export const changeWords = (day: Day, id: FactId): string => {
  const fact = factOf(day, id);
  return fact ? factWords(day, fact) : '';
};

export const nameOfTake = (day: Day, id: TakeId): string => {
  const take = day.takes.get(id);
  return take ? takeText(take) : 'a take';
};

/** `'24/1'`, `'24/1 and 24/2'`, or the first and the last of more; empty for none. */
function takesWords(day: Day, takes: readonly TakeId[]): string {
  const names = takes.map((id) => nameOfTake(day, id));
  return names.length < 3 ? listOf(names) : `${names[0]} to ${names.at(-1)}`;
}

function thingWords(day: Day, { of, id }: FieldConflict): string {
  if (of === 'take') return nameOfTake(day, id);
  if (of === 'voice') return nameOf(day, id);
  return of === 'part' ? partName(day.rig, id) || 'a deleted part' : 'the day details';
}

const FIELD_WORDS = {
  mark: 'circled or not',
  falseStart: 'false start or not',
  tailSlate: 'tail slate or not',
  slate: 'slate',
  number: 'number',
  length: 'length',
  file: 'file name',
  kind: 'kind',
  part: 'part',
  person: 'performer',
  priority: 'importance',
  place: 'place',
  pickUp: 'pick-up',
  onSet: 'on set',
  struck: 'deleted or not',
  name: 'name',
  type: 'what it is',
  order: 'place in its list',
  inputKind: 'connector',
  mix: 'mix or iso',
  tap: 'pre or post fader',
  receiver: 'receiver',
  module: 'module',
  outputKind: 'connector',
  carries: 'channels',
  reserved: 'what it is kept for',
  input: 'input',
  positions: 'positions',
  bank: 'bank',
  wear: 'how it is worn',
  khz: 'frequency',
  production: 'production',
  label: 'label',
  date: 'date',
  unit: 'unit',
  mixer: 'mixer',
  boom: 'boom operator',
  utility: 'utility',
  contact: 'contact',
  mixerContact: 'how to reach the mixer',
  boomContact: 'how to reach the boom operator',
  utilityContact: 'how to reach the utility',
  tone: 'reference tone',
  toneRoll: 'roll of the tone',
  recorder: 'recorder',
  remarks: 'remarks',
  sample: 'sample day or not',
  timecodeRate: 'timecode rate',
  sampleRate: 'sample rate',
  bitDepth: 'bit depth',
  fileLayout: 'poly or mono files',
  filePattern: 'names of files',
  slateStyle: 'slate style',
} satisfies Record<DescribedField, string> as Readonly<Record<string, string>>;

const YES_NO: Record<string, readonly [yes: string, no: string]> = {
  falseStart: ['a false start', 'not a false start'],
  tailSlate: ['a tail slate', 'no tail slate'],
  struck: ['deleted', 'not deleted'],
};

/** What a fact says about the field on which phones disagree. */
export function fieldWords(day: Day, id: FactId, { of, id: thing, field }: FieldConflict): string {
  const fact = factOf(day, id);
  const said =
    fact && registersOf(fact).find((one) => one.of === of && one.id === thing && one.field === field);
  const value = said?.value;
  if (field === 'mark') return value === 'none' ? 'no mark' : String(value);
  if (typeof value === 'boolean') return YES_NO[field]?.[value ? 0 : 1] ?? (value ? 'yes' : 'no');
  if (field === 'slate' && value) return `slate ${slateText(value as Slate)}`;
  if (field === 'length' && value) return formatLength((value as Stamp).frames, (value as Stamp).rate);
  if (value === null || value === '') return 'nothing';
  return typeof value === 'object' ? listOf(Object.values(value as object).map(String)) : String(value);
}

/** When a take began and its length, to tell two with the same number apart. */
export function timesOfTake(day: Day, id: TakeId): string {
  const take = day.takes.get(id);
  const start = take ? startOfTake(day, take) : null;
  const length = take?.length ?? null;
  return [
    start && `from ${formatTimecode(start.frames, start.rate)}`,
    length && formatLength(length.frames, length.rate),
  ]
    .filter(Boolean)
    .join(', ');
}
