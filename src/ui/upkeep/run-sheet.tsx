import { useState } from 'preact/hooks';
import { readMetres, readNumbers } from '../../app/commands/typed.ts';
import { describeRun } from '../../app/commands/upkeep.ts';
import type { RunFields } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { ok, type Result } from '../../shared/result.ts';
import { type DayRun, RUN_DEFAULTS, runsOf } from '../../upkeep/wiring/day-runs.ts';
import { WIRES } from '../../upkeep/wiring/direct-current.ts';
import { POWER_CLASSES } from '../../upkeep/wiring/ethernet-power.ts';
import { CABLES } from '../../upkeep/wiring/network-cables.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { DcReport } from './dc-report.tsx';
import { NetworkReport } from './network-report.tsx';
import { Select } from './select.tsx';
import { CABLE_WORDS, figureWords } from './words.ts';

type Type = 'network' | 'dc';
type Typed = Record<(typeof NETWORK | typeof DC)[number][0], string>;

const NETWORK = [
  ['watts', 'Box power, W'],
  ['celsius', 'Cable temperature, °C'],
  ['connectorOhms', 'Connectors, Ω'],
  ['channels', 'Channels of sound'],
  ['channelsAStream', 'Channels per stream'],
  ['samplesAPacket', 'Samples per packet'],
  ['linkMbps', 'Link, Mbit/s'],
] as const;
const DC = [
  ['volts', 'Supply, V'],
  ['watts', 'Device power, W'],
  ['deviceMinVolts', 'Minimum voltage, V'],
  ['batteryWattHours', 'Battery, Wh'],
] as const;

const typedOf = (run: DayRun): Typed => {
  const fields = [...NETWORK, ...DC].map(([field]) => [field, run[field]] as const);
  return Object.fromEntries(
    fields.map(([field, value]) => [field, value === null ? '' : String(value)]),
  ) as Typed;
};

/** The typed text as fields of a run; an empty figure means the default, or none. */
function readRun(metres: string, typed: Typed, type: Type): Result<RunFields> {
  const length = readMetres(metres);
  if (!length.ok) return length;
  const read = readNumbers(typed);
  if (!read.ok) return read;
  const wanted = (type === 'network' ? NETWORK : DC).map(([field]) => field);
  const said = Object.fromEntries(wanted.map((field) => [field, read.value[field] ?? RUN_DEFAULTS[field]]));
  return ok({ ...said, metres: length.value ?? RUN_DEFAULTS.metres } as RunFields);
}

interface RunSheetProps {
  readonly id: string | undefined;
  readonly type: Type;
  readonly onClose: () => void;
}

/** A cable run with its figures, recomputed on every key. */
export function RunSheet({ id, type, onClose }: RunSheetProps) {
  const store = useDay();
  const run = useRun();
  const day = store.day.value;
  const known = runsOf(day).find((one) => one.id === id);
  const start: DayRun = known ?? {
    ...RUN_DEFAULTS,
    metres: type === 'dc' ? 2 : RUN_DEFAULTS.metres,
    id: '',
    type,
    name: type === 'dc' ? 'Cart lead' : 'Far box',
  };
  const recorders = recordersOf(day);
  const [name, setName] = useState(start.name);
  const [metres, setMetres] = useState(figureWords(start.metres, 2));
  const [choice, setChoice] = useState({
    cable: start.cable,
    powerClass: start.powerClass,
    awg: start.awg,
    recorder: start.recorder,
  });
  const [typed, setTyped] = useState<Typed>(() => typedOf(start));
  const read = readRun(metres, typed, type);
  const draft: DayRun = { ...start, ...choice, ...(read.ok ? (read.value as Partial<DayRun>) : {}) };

  const save = (event: Event): void => {
    event.preventDefault();
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const used =
      type === 'network'
        ? { cable: choice.cable, powerClass: choice.powerClass }
        : { awg: choice.awg, recorder: choice.recorder };
    const fields: RunFields = {
      ...read.value,
      ...used,
      type,
      name: name.trim() || start.name,
      struck: false,
    };
    const said = id ?? store.newId();
    if (run(describeRun(said, fields), `${fields.name} saved`)) onClose();
  };
  const strike = (): void => {
    if (id && run(describeRun(id, { struck: true }), `${start.name} deleted`)) onClose();
  };
  return (
    <Sheet
      title={type === 'network' ? 'A far box on a network lead' : 'A DC lead'}
      onClose={onClose}
      foot={
        <div class="prep-foot">
          {known && <Button onClick={strike}>Delete</Button>}
          <Button look="solid" type="submit" form="run-form">
            Save
          </Button>
        </div>
      }
    >
      <div class="section">
        {type === 'network' ? <NetworkReport day={day} run={draft} /> : <DcReport run={draft} />}
      </div>
      <form id="run-form" class="section" onSubmit={save}>
        <div class="field-pair">
          <TextField label="Name" value={name} onInput={setName} capitals="words" />
          <TextField label="Length, m (or 250 ft)" value={metres} onInput={setMetres} />
        </div>
        {type === 'network' ? (
          <div class="field-pair">
            <Select
              label="Cable"
              value={choice.cable}
              options={Object.keys(CABLES).map((value) => ({ value, name: CABLE_WORDS[value] ?? value }))}
              onChoose={(cable) => setChoice({ ...choice, cable })}
            />
            <Select
              label="Power class"
              value={String(choice.powerClass)}
              options={POWER_CLASSES.map(({ id: value, sourceWatts, deviceWatts }) => ({
                value: String(value),
                name: `${value}: ${sourceWatts} W, ${deviceWatts} at the device`,
              }))}
              onChoose={(value) => setChoice({ ...choice, powerClass: Number(value) })}
            />
          </div>
        ) : (
          <Select
            label="Wire"
            value={String(choice.awg)}
            options={Object.keys(WIRES).map((value) => ({ value, name: `AWG ${value}` }))}
            onChoose={(value) => setChoice({ ...choice, awg: Number(value) })}
          />
        )}
        {type === 'dc' && recorders.length > 1 && (
          <Choice
            label="It powers"
            value={choice.recorder ?? OTHER}
            options={[
              ...recorders.map((one) => ({ value: one.id, name: one.name })),
              { value: OTHER, name: 'something else' },
            ]}
            onChoose={(value) => setChoice({ ...choice, recorder: value === OTHER ? null : value })}
          />
        )}
        <div class="field-pair">
          {(type === 'network' ? NETWORK : DC).map(([field, label]) => (
            <TextField
              key={field}
              label={label}
              value={typed[field]}
              onInput={(value) => setTyped({ ...typed, [field]: value })}
              inputMode="decimal"
              placeholder={
                RUN_DEFAULTS[field] === null
                  ? (PLACEHOLDER[field] ?? 'not known')
                  : String(RUN_DEFAULTS[field])
              }
            />
          ))}
        </div>
      </form>
      <Cautions
        of={
          type === 'network'
            ? ['network-power', 'passive-feed', 'audio-network']
            : ['cart-power', 'connectors', 'mains']
        }
      />
    </Sheet>
  );
}

/** No recorder has an id with a space in it. */
const OTHER = 'something else';

const PLACEHOLDER: Partial<Record<keyof Typed, string>> = { watts: 'most of the class, or 10' };
