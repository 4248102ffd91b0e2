import { useState } from 'preact/hooks';
import { describeCarrier } from '../../app/commands/radio.ts';
import { formatMhz, parseMhz, readNumber } from '../../app/commands/typed.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';

/** Something else that radiates: comms, a camera link, a return. Without an id it is new. */
export function CarrierSheet({ id, onClose }: { id: string | undefined; onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const known = id === undefined ? undefined : store.day.value.upkeep.carriers.get(id);
  const [name, setName] = useState(known?.name ?? '');
  const [mhz, setMhz] = useState(known?.khz ? formatMhz(known.khz) : '');
  const [spacing, setSpacing] = useState(known?.spacingKhz ? String(known.spacingKhz) : '');
  const [heard, setHeard] = useState(known?.heard ?? false);
  const save = (event: Event): void => {
    event.preventDefault();
    const khz = parseMhz(mhz);
    if (!khz.ok) {
      complain(khz.problem);
      return;
    }
    const own = readNumber(spacing, 'khz');
    if (!own.ok) {
      complain(own.problem);
      return;
    }
    const fields = { name: name.trim(), khz: khz.value, spacingKhz: own.value, heard, struck: false };
    const carrier = id ?? store.newId();
    const done = `${name.trim()} on ${formatMhz(khz.value)} MHz`;
    if (run(describeCarrier(carrier, fields), done)) onClose();
  };
  const strike = (): void => {
    if (id === undefined) return;
    if (run(describeCarrier(id, { struck: true }), `${known?.name} deleted`)) onClose();
  };
  return (
    <Sheet
      title={known?.name ?? 'Another carrier'}
      under="Anything else that transmits nearby: comms, camera links, monitors."
      onClose={onClose}
    >
      <form class="section" onSubmit={save}>
        <TextField label="Name" value={name} onInput={setName} capitals="sentences" />
        <div class="field-pair">
          <TextField label="Frequency, MHz" value={mhz} onInput={setMhz} inputMode="decimal" />
          <TextField
            label="Own spacing, kHz"
            value={spacing}
            onInput={setSpacing}
            inputMode="numeric"
            placeholder="as set for all"
          />
        </div>
        <Choice
          label="Is it received here?"
          value={heard ? 'yes' : 'no'}
          options={[
            { value: 'no', name: 'No, it only transmits' },
            { value: 'yes', name: 'Yes, hits on it count' },
          ]}
          onChoose={(value) => setHeard(value === 'yes')}
        />
        <div class="buttons">
          <Button look="solid" type="submit">
            Save
          </Button>
          {known && <Button onClick={strike}>Delete</Button>}
        </div>
      </form>
    </Sheet>
  );
}
