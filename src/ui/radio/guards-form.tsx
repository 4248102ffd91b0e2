import { useState } from 'preact/hooks';
import { setGuards } from '../../app/commands/radio.ts';
import { readNumber } from '../../app/commands/typed.ts';
import { type Guards, SUGGESTED_GUARDS } from '../../radio/carrier.ts';
import { useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';

const FIELDS = [
  ['carrierKhz', 'Carrier to carrier'],
  ['twoToneThirdKhz', 'To 2A − B'],
  ['threeToneThirdKhz', 'To A + B − C'],
  ['twoToneFifthKhz', 'To 3A − 2B'],
  ['tvEdgeKhz', 'To spectrum in use'],
] as const satisfies readonly (readonly [keyof Guards, string])[];

/** Distances to keep, in kHz: no standard fixes them, so they are the mixer's choice. */
export function GuardsForm({ guards }: { guards: Guards }) {
  const run = useRun();
  const [typed, setTyped] = useState<Partial<Record<keyof Guards, string>>>({});
  const save = (event: Event): void => {
    event.preventDefault();
    const said: Partial<Guards> = {};
    for (const [field] of FIELDS) {
      const read = readNumber(typed[field] ?? '', 'khz');
      if (!read.ok) {
        complain(read.problem);
        return;
      }
      if (read.value !== null) Object.assign(said, { [field]: read.value });
    }
    if (run(setGuards(said), 'Minimum spacing saved')) setTyped({});
  };
  const suggest = (): void => {
    if (run(setGuards(SUGGESTED_GUARDS), 'Suggested spacing used')) setTyped({});
  };
  return (
    <form class="section" onSubmit={save}>
      <div class="field-pair">
        {FIELDS.map(([field, label]) => (
          <TextField
            key={field}
            label={`${label}, kHz`}
            value={typed[field] ?? String(guards[field])}
            onInput={(value) => setTyped({ ...typed, [field]: value })}
            inputMode="numeric"
          />
        ))}
      </div>
      <p class="soft">
        A distance equal to the minimum is clean; 0 turns a check off. The suggested values are common
        practice, from no standard.
      </p>
      <div class="buttons">
        <Button look="solid" type="submit">
          Save spacing
        </Button>
        <Button onClick={suggest}>Use suggested</Button>
      </div>
    </form>
  );
}
