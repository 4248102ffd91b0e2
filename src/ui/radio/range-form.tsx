import { useState } from 'preact/hooks';
import { describeBand } from '../../app/commands/radio.ts';
import { formatMhz, parseMhz, readNumber } from '../../app/commands/typed.ts';
import type { BandFields } from '../../day/model.ts';
import { groupOf } from '../../radio/day/day-ranges.ts';
import type { Result } from '../../shared/result.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { rangeWords } from './words.ts';

interface BandTyped {
  readonly from: string;
  readonly to: string;
  readonly raster: string;
  readonly spacing: string;
  readonly group: string;
  readonly name: string;
}

/** The text shown for a range of spectrum. */
export const typedBand = (known: BandFields | undefined, group = ''): BandTyped => ({
  from: known?.fromKhz ? formatMhz(known.fromKhz) : '',
  to: known?.toKhz ? formatMhz(known.toKhz) : '',
  raster: String(known?.rasterKhz ?? 25),
  spacing: known?.spacingKhz ? String(known.spacingKhz) : '',
  group: known?.group ?? group,
  name: known?.name ?? '',
});

function readEnds({ from, to }: BandTyped): Result<{ fromKhz: number; toKhz: number }> {
  const low = parseMhz(from);
  if (!low.ok) return low;
  const high = parseMhz(to);
  return high.ok ? { ok: true, value: { fromKhz: low.value, toKhz: high.value } } : high;
}

/** Parses the tuning range of packs. */
function readRange(typed: BandTyped): Result<BandFields> {
  const ends = readEnds(typed);
  if (!ends.ok) return ends;
  const raster = readNumber(typed.raster, 'khz');
  if (!raster.ok) return raster;
  const spacing = readNumber(typed.spacing, 'khz');
  if (!spacing.ok) return spacing;
  return {
    ok: true,
    value: {
      use: 'tunable',
      ...ends.value,
      rasterKhz: raster.value ?? 25,
      spacingKhz: spacing.value,
      group: typed.group.trim(),
      struck: false,
    },
  };
}

function readStretch(typed: BandTyped): Result<BandFields> {
  const ends = readEnds(typed);
  if (!ends.ok) return ends;
  const name = typed.name.trim() || rangeWords(ends.value.fromKhz, ends.value.toKhz);
  return { ok: true, value: { use: 'occupied', ...ends.value, name, struck: false } };
}

interface BandFormProps {
  readonly id: string | undefined;
  readonly use: 'tunable' | 'occupied';
  readonly group?: string;
  readonly onDone: () => void;
}

/** A range of spectrum: where packs tune, or what is in use here. */
export function BandForm({ id, use, group, onDone }: BandFormProps) {
  const store = useDay();
  const run = useRun();
  const known = id === undefined ? undefined : store.day.value.upkeep.bands.get(id);
  const [typed, setTyped] = useState(() => typedBand(known, group));
  const set = (field: keyof BandTyped) => (value: string) => setTyped({ ...typed, [field]: value });
  const save = (event: Event): void => {
    event.preventDefault();
    const read = use === 'tunable' ? readRange(typed) : readStretch(typed);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const band = id ?? store.newId();
    const ends = rangeWords(read.value.fromKhz ?? 0, read.value.toKhz ?? 0);
    const done = use === 'tunable' ? `Packs ${typed.group || 'all'} tune ${ends}` : `${ends} is in use here`;
    if (run(describeBand(band, read.value), done)) onDone();
  };
  const strike = (): void => {
    if (id === undefined) return;
    if (run(describeBand(id, { struck: true }), 'Deleted')) onDone();
  };
  return (
    <form class="section" onSubmit={save}>
      <div class="field-pair">
        <TextField label="From, MHz" value={typed.from} onInput={set('from')} inputMode="decimal" />
        <TextField label="To, MHz" value={typed.to} onInput={set('to')} inputMode="decimal" />
      </div>
      {use === 'tunable' ? (
        <>
          <div class="field-pair">
            <TextField
              label="Tuning step, kHz"
              value={typed.raster}
              onInput={set('raster')}
              inputMode="numeric"
            />
            <TextField
              label="Own spacing, kHz"
              value={typed.spacing}
              onInput={set('spacing')}
              inputMode="numeric"
              placeholder="as set for all"
            />
          </div>
          <TextField
            label="Packs named with these letters; empty for all"
            value={typed.group}
            onInput={set('group')}
            capitals="characters"
          />
        </>
      ) : (
        <TextField label="What is there" value={typed.name} onInput={set('name')} capitals="sentences" />
      )}
      <div class="buttons">
        <Button look="solid" type="submit">
          Save
        </Button>
        {known && <Button onClick={strike}>Delete</Button>}
      </div>
    </form>
  );
}

/** Shown where it is needed: a search must know where the packs tune. */
export function NewRange({ name }: { name: string }) {
  return (
    <>
      <p class="section-title">Where can {name} be tuned? Enter the range to find clean frequencies.</p>
      <BandForm id={undefined} use="tunable" group={groupOf(name)} onDone={() => {}} />
    </>
  );
}
