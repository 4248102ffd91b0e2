import type { VoiceFields, VoiceKind } from '../../facts/voice-described.ts';
import { TextField } from '../parts/field.tsx';

/** What is typed of a voice. */
export interface VoiceTexts {
  readonly part: string;
  readonly person: string;
  readonly number: string;
  readonly place: string;
}

export const blankFields: VoiceTexts = { part: '', person: '', number: '', place: '' };

type Field = keyof VoiceTexts;

/** What is asked of each kind, and how it is called there. */
const ASKED: Record<VoiceKind, readonly (readonly [field: Field, label: string])[]> = {
  performer: [
    ['part', 'Part, as editors read it'],
    ['person', 'Performer'],
    ['number', 'Cast number'],
  ],
  boom: [
    ['part', 'Name, as editors read it'],
    ['person', 'Operator'],
  ],
  plant: [
    ['part', 'Name, as editors read it'],
    ['place', 'Place'],
  ],
  feed: [
    ['part', 'Name, as editors read it'],
    ['place', 'From'],
  ],
};

const LONGEST: Record<Field, number> = { part: 200, person: 200, number: 20, place: 200 };

/** What was typed of the fields that are asked of this kind, trimmed. */
export function saidFields(kind: VoiceKind, texts: VoiceTexts): VoiceFields {
  const asked = ASKED[kind].map(([field]) => [field, texts[field].trim().slice(0, LONGEST[field])]);
  return Object.fromEntries(asked);
}

interface FieldsetProps {
  readonly kind: VoiceKind;
  readonly texts: VoiceTexts;
  readonly onInput: (texts: VoiceTexts) => void;
  /** Who has the cast number already, in words; empty where nobody has. */
  readonly taken: string;
}

export function VoiceFieldset({ kind, texts, onInput, taken }: FieldsetProps) {
  return (
    <>
      {ASKED[kind].map(([field, label]) => (
        <TextField
          key={field}
          label={label}
          value={texts[field]}
          onInput={(value) => onInput({ ...texts, [field]: value })}
          capitals={field === 'number' ? 'characters' : 'words'}
          {...(field === 'number' && taken !== '' && { hint: taken })}
        />
      ))}
    </>
  );
}
