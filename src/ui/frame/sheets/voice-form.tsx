import { useState } from 'preact/hooks';
import { describeVoice, strikeVoice } from '../../../app/commands/cast.ts';
import type { VoiceFields, VoiceId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { nameOf } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';
import { saidFields, VoiceFieldset, type VoiceTexts } from './voice-fieldset.tsx';

interface FormProps {
  readonly voice: VoiceId;
  readonly onDone: () => void;
  readonly onStruck: () => void;
}

/** Spelling, cast number and priority: entered once, right everywhere. */
export function VoiceForm({ voice, onDone, onStruck }: FormProps) {
  const day = useDay().day.value;
  const run = useRun();
  const known = day.voices.get(voice)!;
  const [texts, setTexts] = useState<VoiceTexts>(known);
  const [priority, setPriority] = useState(String(known.priority));
  const name = nameOf(day, voice);

  const save = (): void => {
    const rank = Math.min(999, Math.max(1, Math.round(Number(priority)) || known.priority));
    const said: VoiceFields = { ...saidFields(known.kind, texts), priority: rank };
    const changed = Object.entries(said).filter(
      ([field, value]) => known[field as keyof VoiceFields] !== value,
    );
    const fields: VoiceFields = Object.fromEntries(changed);
    const done = `${said.part || said.person || name} changed everywhere`;
    if (changed.length === 0 || run(describeVoice(voice, fields), done)) onDone();
  };
  const strike = (): void => {
    if (run(strikeVoice(voice), `${name} removed from the cast`)) onStruck();
  };

  return (
    <form
      class="section"
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <VoiceFieldset kind={known.kind} texts={texts} onInput={setTexts} taken="" />
      {known.kind === 'performer' && (
        <TextField label="Priority, 1 is first" value={priority} onInput={setPriority} inputMode="numeric" />
      )}
      <div class="buttons">
        <Button look="solid" type="submit">
          Save
        </Button>
        <Button onClick={strike}>Remove from cast</Button>
      </div>
    </form>
  );
}
