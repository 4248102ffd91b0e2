import {
  VOICE_KINDS,
  VOICE_TEXT_LONGEST,
  type VoiceFields,
  type VoiceKind,
  type VoiceText,
} from '../../../day/model.ts';
import { isOneOf, type Open } from '../../../shared/open-word.ts';
import { TextField } from '../../kit/field.tsx';

/** The typed fields of a voice. */
export type VoiceTexts = Readonly<Record<VoiceText, string>>;

export const blankFields: VoiceTexts = {
  part: '',
  person: '',
  number: '',
  place: '',
  pickUp: '',
  onSet: '',
};

/** Labels of the fields asked for each kind of voice, in order. */
const LABELS: Record<VoiceText, Record<VoiceKind, string | null>> = {
  part: {
    performer: 'Part, as editors see it',
    boom: 'Name, as editors see it',
    plant: 'Name, as editors see it',
    feed: 'Name, as editors see it',
  },
  person: { performer: 'Performer', boom: 'Operator', plant: null, feed: null },
  number: { performer: 'Cast number', boom: null, plant: null, feed: null },
  place: { performer: null, boom: null, plant: 'Place', feed: 'From' },
  pickUp: { performer: 'Pick-up', boom: null, plant: null, feed: null },
  onSet: { performer: 'On set', boom: null, plant: null, feed: null },
};

type Asked = readonly (readonly [field: VoiceText, label: string])[];

/** A kind from a newer version has at least a name. */
const ASKED_OF_UNKNOWN: Asked = [['part', 'Name, as editors see it']];

const asked = (kind: Open<VoiceKind>): Asked =>
  isOneOf(VOICE_KINDS, kind)
    ? (Object.keys(LABELS) as VoiceText[]).flatMap((field) => {
        const label = LABELS[field][kind];
        return label === null ? [] : [[field, label] as const];
      })
    : ASKED_OF_UNKNOWN;

/** The typed values of the fields asked for this kind, trimmed. */
export const saidFields = (kind: Open<VoiceKind>, texts: VoiceTexts): VoiceFields =>
  Object.fromEntries(
    asked(kind).map(([field]) => [field, texts[field].trim().slice(0, VOICE_TEXT_LONGEST[field])]),
  );

interface FieldsetProps {
  readonly kind: Open<VoiceKind>;
  readonly texts: VoiceTexts;
  readonly onInput: (texts: VoiceTexts) => void;
  /** Who already has the cast number; empty if nobody. */
  readonly taken: string;
}

export function VoiceFieldset({ kind, texts, onInput, taken }: FieldsetProps) {
  return (
    <>
      {asked(kind).map(([field, label]) => (
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
