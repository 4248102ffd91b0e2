import { useState } from 'preact/hooks';
import { describeLeads, putOnSnake } from '../../app/commands/upkeep.ts';
import { SNAKE_SIGNALS, type SnakeSignal } from '../../day/model.ts';
import type { DayLead } from '../../upkeep/wiring/day-wiring.ts';
import { inputName } from '../../upkeep/wiring/wiring-sheet.ts';
import { useRun } from '../frame/context.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { OUTPUT_KIND_WORD } from '../words/connectors.ts';

interface LeadSheetProps {
  readonly lead: DayLead;
  /** All leads of the sheet, in order: a snake includes those that follow. */
  readonly leads: readonly DayLead[];
  readonly onClose: () => void;
}

type Kind = 'xlr' | 'snake' | 'other';

/** The wiring of one lead, or of a whole snake that begins with it. */
export function LeadSheet({ lead, leads, onClose }: LeadSheetProps) {
  const run = useRun();
  const { ends } = lead;
  const [kind, setKind] = useState<Kind>(ends.kind);
  const [name, setName] = useState(/^\d+$/.test(lead.lead) ? '' : lead.lead);
  const [snake, setSnake] = useState(ends.kind === 'snake' ? ends.snake : 'A');
  const [carries, setCarries] = useState<SnakeSignal>(ends.kind === 'snake' ? ends.carries : 'analogue');
  const [circuit, setCircuit] = useState(ends.kind === 'snake' ? ends.circuit : 1);
  const [words, setWords] = useState(ends.kind === 'other' && ends.words !== 'not said' ? ends.words : '');
  const from = leads.findIndex(({ id }) => id === lead.id);
  const run8 = leads.slice(from, from + 9 - circuit).map(({ id }) => id);

  const save = (): void => {
    const named = name.trim() === '' ? {} : { name: name.trim() };
    const fields =
      kind === 'snake'
        ? { ...named, ends: kind, snake: snake.trim() || 'A', circuit, carries }
        : { ...named, ends: kind, ...(kind === 'other' && { words: words.trim() }) };
    if (run(describeLeads([lead.id], fields), `${lead.output} to ${lead.input} edited`)) onClose();
  };
  const saveRun = (): void => {
    const done = `${countOf(run8.length, 'lead')} on snake ${snake.trim()}`;
    if (run(putOnSnake(run8, snake, carries, circuit), done)) onClose();
  };
  return (
    <Sheet
      title={`${lead.output} to ${inputName(lead)}`}
      under="How this lead is wired, for the wiring sheet."
      onClose={onClose}
      foot={
        <div class="prep-foot">
          <Button look="solid" onClick={save}>
            Save
          </Button>
          {kind === 'snake' && run8.length > 1 && (
            <Button onClick={saveRun}>
              Circuits {circuit} to {circuit + run8.length - 1}, from here down
            </Button>
          )}
        </div>
      }
    >
      <div class="section">
        <TextField label="What it is called; empty for its number" value={name} onInput={setName} />
        <Choice
          label="Wired as"
          value={kind}
          options={[
            { value: 'xlr', name: 'XLR' },
            { value: 'snake', name: '25-pin snake' },
            { value: 'other', name: 'other' },
          ]}
          onChoose={setKind}
        />
        {kind === 'snake' && (
          <>
            <TextField label="Which snake" value={snake} onInput={setSnake} capitals="characters" />
            <Choice
              label="Circuit"
              value={String(circuit)}
              options={['1', '2', '3', '4', '5', '6', '7', '8'].map((value) => ({ value, name: value }))}
              onChoose={(value) => setCircuit(Number(value))}
            />
            <Choice
              label="It carries"
              value={carries}
              options={SNAKE_SIGNALS.map((value) => ({ value, name: OUTPUT_KIND_WORD[value] }))}
              onChoose={setCarries}
            />
          </>
        )}
        {kind === 'other' && <TextField label="In words" value={words} onInput={setWords} />}
      </div>
      <Cautions of={['snake']} />
    </Sheet>
  );
}
