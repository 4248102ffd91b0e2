import type { Header } from '../../../day/model.ts';
import { TextField } from '../../kit/field.tsx';
import { Section } from '../../kit/section.tsx';

const FIELDS = [
  ['mixerContact', 'Sound mixer: phone or email'],
  ['boomContact', 'Boom: phone or email'],
  ['utilityContact', 'Utility: phone or email'],
  ['tone', 'Reference tone', 'level and frequency'],
  ['toneRoll', 'Roll with the tone'],
] as const satisfies readonly (readonly [keyof Header, string, string?])[];

interface CrewFieldsProps {
  readonly shown: Header;
  readonly onSet: (fields: Partial<Header>) => void;
}

/** What some reports have at their head and most days leave empty. */
export function CrewFields({ shown, onSet }: CrewFieldsProps) {
  const entered = FIELDS.filter(([field]) => shown[field]).length;
  return (
    <Section
      name="Contacts and reference tone"
      under={entered > 0 ? `${entered} of ${FIELDS.length} entered` : 'how editors reach the crew'}
    >
      <div class="section">
        {FIELDS.map(([field, label, placeholder = '']) => (
          <TextField
            key={field}
            label={label}
            value={shown[field] ?? ''}
            onInput={(value) => onSet({ [field]: value })}
            placeholder={placeholder}
          />
        ))}
      </div>
    </Section>
  );
}
