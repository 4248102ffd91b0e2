import { useState } from 'preact/hooks';
import { readNumbers } from '../../app/commands/typed.ts';
import { addDevice, describeDevices, freshCells, jamDevices } from '../../app/commands/upkeep.ts';
import type { Day, DeviceFields } from '../../day/model.ts';
import { groupOf } from '../../radio/day/day-ranges.ts';
import { type Device, devicesOf, RECORDER } from '../../upkeep/due/day-devices.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { DoneAgo } from './done-ago.tsx';

interface DeviceSheetProps {
  /** Undefined for a new one. */
  readonly id: string | undefined;
  readonly onClose: () => void;
}

/** One device: how long its cells run, how far its clock may drift, and what was done to it earlier. */
export function DeviceSheet({ id, onClose }: DeviceSheetProps) {
  const store = useDay();
  const run = useRun();
  const day = store.day.value;
  const device = devicesOf(day).find((one) => one.id === id);
  const others = devicesOf(day).filter((one) => one.hasTimecode && one.id !== id);
  const [from, setFrom] = useState(RECORDER);
  if (id !== undefined && !device) return null;
  const strike = (): void => {
    if (device && run(describeDevices([device.id], { struck: true }), `${device.name} deleted`)) onClose();
  };
  return (
    <Sheet title={device?.name ?? 'New device'} under={underOf(device)} onClose={onClose}>
      <DeviceForm device={device} onDone={onClose} />
      {device?.hasCells && (
        <DoneAgo
          title="Fresh batteries went in"
          onDone={(minutesAgo) =>
            run(freshCells([device.id], { minutesAgo }), `Fresh batteries in ${device.name}`)
          }
        />
      )}
      {device?.hasTimecode && device.id !== RECORDER && (
        <DoneAgo
          title="Jammed"
          onDone={(minutesAgo) => run(jamDevices([device.id], from, { minutesAgo }), `${device.name} jammed`)}
        >
          <Choice
            label="From"
            value={from}
            options={others.map((other) => ({ value: other.id, name: other.name }))}
            onChoose={setFrom}
          />
        </DoneAgo>
      )}
      {device?.type === 'other' && (
        <div class="section">
          <Button onClick={strike}>Delete {device.name}</Button>
        </div>
      )}
    </Sheet>
  );
}

function underOf(device: Device | undefined): string {
  if (device?.id === RECORDER) return 'Everything is jammed from it, unless you choose another.';
  return UNDER[device?.type ?? 'new'];
}

const UNDER = {
  pack: 'A transmitter of the rig.',
  recorder: 'A recorder besides the first: jammed like any other box.',
  listener: 'The receiver of a listener.',
  other: 'A device besides the rig.',
  new: 'A slate, a timecode box, a camera, a comms base: anything with batteries or timecode.',
} as const;

type Typed = { readonly runtimeHours: string; readonly ppm: string };

function DeviceForm({ device, onDone }: { device: Device | undefined; onDone: () => void }) {
  const store = useDay();
  const run = useRun();
  const [name, setName] = useState(device?.name ?? '');
  const [typed, setTyped] = useState<Typed>({
    runtimeHours: device?.runtimeHours === undefined ? '' : String(device.runtimeHours),
    ppm: device?.ppm === undefined ? '' : String(device.ppm),
  });
  const [basis, setBasis] = useState<Device['runtimeBasis']>(device?.runtimeBasis ?? 'planned');
  const [has, setHas] = useState({
    hasCells: device?.hasCells ?? true,
    hasTimecode: device?.hasTimecode ?? true,
  });
  const alike = device ? alikeOf(store.day.value, device) : [];
  const isReceiver = device?.type === 'listener';
  const isNamed = device === undefined || device.type === 'other';

  const save = (devices: readonly string[]): void => {
    const read = readNumbers(typed);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const { runtimeHours } = read.value;
    const fields: DeviceFields = isReceiver
      ? { runtimeHours, runtimeBasis: basis }
      : { ...read.value, runtimeBasis: basis, ...has };
    const words = devices.length > 1 ? `${devices.length} devices edited` : `${name.trim()} edited`;
    const said = device
      ? run(describeDevices(devices, isNamed ? { ...fields, name: name.trim() } : fields), words)
      : run(addDevice(store.newId(), { ...fields, name, struck: false }), `${name.trim()} added`);
    if (said) onDone();
  };
  return (
    <form
      class="section"
      onSubmit={(event) => {
        event.preventDefault();
        save(device ? [device.id] : []);
      }}
    >
      {isNamed && <TextField label="Name" value={name} onInput={setName} capitals="words" />}
      <div class="field-pair">
        <TextField
          label="Battery life, hours"
          value={typed.runtimeHours}
          onInput={(runtimeHours) => setTyped({ ...typed, runtimeHours })}
          inputMode="decimal"
          placeholder="5.5"
        />
        {!isReceiver && (
          <TextField
            label="Clock tolerance, ppm"
            value={typed.ppm}
            onInput={(ppm) => setTyped({ ...typed, ppm })}
            inputMode="decimal"
            placeholder="1"
          />
        )}
      </div>
      <Choice
        label="Battery life is"
        value={basis}
        options={[
          { value: 'planned', name: 'planned' },
          { value: 'measured', name: 'measured' },
        ]}
        onChoose={setBasis}
      />
      {!isReceiver && (
        <fieldset class="choice">
          <legend class="soft">It has</legend>
          <div class="buttons">
            {(['hasCells', 'hasTimecode'] as const).map((field) => (
              <Button
                key={field}
                pressed={has[field]}
                onClick={() => setHas({ ...has, [field]: !has[field] })}
              >
                {field === 'hasCells' ? 'batteries' : 'timecode'}
              </Button>
            ))}
          </div>
        </fieldset>
      )}
      <div class="buttons">
        <Button look="solid" type="submit">
          Save
        </Button>
        {alike.length > 1 && (
          <Button onClick={() => save(alike)}>
            Save for all {alike.length} {isReceiver ? 'receivers' : `${groupOf(device?.name ?? '')} packs`}
          </Button>
        )}
      </div>
    </form>
  );
}

/** Packs named with the same letters take the same cells, and so do the receivers of listeners. */
const alikeOf = (day: Day, { type, name }: Device): string[] =>
  devicesOf(day)
    .filter((one) => one.type === type)
    .filter((one) => type === 'listener' || (type === 'pack' && groupOf(one.name) === groupOf(name)))
    .map(({ id }) => id);
