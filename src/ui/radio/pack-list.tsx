import { useEffect, useRef, useState } from 'preact/hooks';
import { setFrequencies } from '../../app/commands/radio.ts';
import { formatMhz, parseMhzOrNone } from '../../app/commands/typed.ts';
import type { DayPlan, PlanCarrier } from '../../radio/day/day-plan.ts';
import { rangeProblemOf } from '../../radio/day/day-ranges.ts';
import type { Analysis } from '../../radio/intermodulation/analysis.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { isReadOnly } from '../kit/reads-only.ts';
import { nameOf } from '../words/chain.ts';
import { hitsWords } from './words.ts';

interface PackListProps {
  readonly plan: DayPlan;
  readonly analysis: Analysis | undefined;
  readonly onPack: (id: string) => void;
}

/** Every pack with its frequency, typed in place; Enter goes to the next. */
export function PackList({ plan, analysis, onPack }: PackListProps) {
  const packs = plan.all.filter(({ type }) => type === 'pack');
  return (
    <ul class="radio-packs">
      {packs.map((pack) => (
        <li key={pack.id}>
          <PackRow pack={pack} hits={hitsOn(plan, analysis, pack)} onMore={() => onPack(pack.id)} />
        </li>
      ))}
    </ul>
  );
}

export function hitsOn(
  plan: DayPlan,
  analysis: Analysis | undefined,
  { id }: PlanCarrier,
): number | undefined {
  const at = plan.carriers.findIndex((carrier) => carrier.id === id);
  return at < 0 ? undefined : analysis?.hitsOnCarrier[at];
}

function PackRow({
  pack,
  hits,
  onMore,
}: {
  pack: PlanCarrier;
  hits: number | undefined;
  onMore: () => void;
}) {
  const day = useDay().day.value;
  const run = useRun();
  const known = pack.khz === null ? '' : formatMhz(pack.khz);
  const [typed, setTyped] = useState(known);
  // Enter moves the focus, and leaving the field saves too: save only once.
  const saved = useRef(known);
  useEffect(() => {
    saved.current = known;
    setTyped(known);
  }, [known]);
  const save = (): boolean => {
    const text = typed.trim();
    if (text === saved.current) return true;
    const read = parseMhzOrNone(text);
    if (!read.ok) {
      complain(read.problem);
      return false;
    }
    saved.current = text;
    const done = read.value ? `${pack.name} on ${formatMhz(read.value)} MHz` : `${pack.name}: no frequency`;
    const { value: khz } = read;
    if (khz !== pack.khz && !run(setFrequencies([{ transmitter: pack.id, khz }]), done)) return false;
    setTyped(khz ? formatMhz(khz) : '');
    return true;
  };
  return (
    <form
      class="radio-pack"
      onSubmit={(event) => {
        event.preventDefault();
        if (save()) focusNext(event.currentTarget);
      }}
    >
      <label class="radio-name" for={`mhz-${pack.id}`}>
        <strong>{pack.name}</strong>
        <span class="soft">{pack.voice ? nameOf(day, pack.voice) : 'nobody'}</span>
      </label>
      <input
        id={`mhz-${pack.id}`}
        class="mono"
        value={typed}
        inputMode="decimal"
        enterKeyHint="next"
        autoComplete="off"
        readOnly={isReadOnly.value}
        placeholder="MHz"
        aria-label={`${pack.name} in MHz`}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={save}
      />
      <Button look="bare" class="radio-state" onClick={onMore}>
        <span class="unseen">{pack.name}: find, switch; </span>
        <StateWord pack={pack} hits={hits} />
      </Button>
    </form>
  );
}

function StateWord({ pack, hits }: { pack: PlanCarrier; hits: number | undefined }) {
  const day = useDay().day.value;
  if (pack.khz === null) return <span>find</span>;
  if (pack.problem) return <strong class="warn">not valid</strong>;
  const misfit = rangeProblemOf(day, pack.name, pack.khz);
  const words = [
    pack.on ? '' : 'off',
    pack.heard ? '' : 'not received',
    misfit ? (misfit.code === 'frequency-off-raster' ? 'between tuning steps' : 'out of range') : '',
  ].filter((word) => word !== '');
  return (
    <>
      {hits !== undefined && hits > 0 ? <strong class="warn">{hitsWords(hits)}</strong> : null}
      {hits === 0 && words.length === 0 ? <span>clean</span> : null}
      {words.map((word) => (
        <span key={word}>{word}</span>
      ))}
    </>
  );
}

/** Enter goes down the list, as on paper. */
function focusNext(form: HTMLFormElement): void {
  const next = form.parentElement?.nextElementSibling?.querySelector('input');
  if (next) next.focus();
  else if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
}
