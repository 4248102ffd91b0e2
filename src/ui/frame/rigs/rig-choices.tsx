import { useState } from 'preact/hooks';
import {
  type Beside,
  layRecorder,
  layRecorderBeside,
  layStartingRig,
  layStartingRigBeside,
  readRigSpec,
  STARTING_RIGS,
} from '../../../app/commands/rig.ts';
import { type InDoubt, isInDoubt } from '../../../app/in-doubt.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { raise } from '../../kit/messages.ts';
import { Row } from '../../kit/row.tsx';
import { countOf } from '../../words/chain.ts';
import { sentenceFor } from '../../words/problems.ts';
import { specWords } from '../../words/rig-spec.ts';
import { useApp, useDay, useRun } from '../context.ts';
import { InDoubtQuestion } from '../in-doubt-question.tsx';
import { complain } from '../messages.ts';
import './rig-choices.css';

interface ChoicesProps {
  /** The recorder that the rig is laid for, beside what is there; without it, it is the day's first rig. */
  readonly beside?: Beside | undefined;
  readonly onDone?: () => void;
}

/** The rigs to choose from: that of another day, a ready-made one, or one described in a line. */
export function RigChoices({ beside, onDone = () => {} }: ChoicesProps) {
  const run = useRun();
  return (
    <>
      <FromAnotherDay beside={beside} onDone={onDone} />
      <h2 class="section-title soft">Ready-made rigs</h2>
      <ul class="rows">
        {STARTING_RIGS.map((rig) => (
          <li key={rig.id}>
            <Row
              title={rig.name}
              under={rig.about}
              word="use"
              onTap={() =>
                run(
                  beside ? layStartingRigBeside(rig, beside) : layStartingRig(rig),
                  `${beside?.name ?? rig.name} set up`,
                ) && onDone()
              }
            />
          </li>
        ))}
      </ul>
      <InABreath beside={beside} onDone={onDone} />
    </>
  );
}

type Laying = Required<Pick<ChoicesProps, 'onDone'>> & Pick<ChoicesProps, 'beside'>;

const DAYS_SHOWN = 4;

function FromAnotherDay({ beside, onDone }: Laying) {
  const app = useApp();
  const { id: here, header } = useDay().day.value;
  const run = useRun();
  const [asking, setAsking] = useState<{ id: string; name: string; doubt: InDoubt } | null>(null);
  // What is made up on a sample day is never proposed for a real one.
  const others = app.days.value
    .filter(({ id, sample }) => id !== here && sample === header.sample)
    .slice(0, DAYS_SHOWN);
  if (others.length === 0) return null;
  const lay = async (id: string, name: string, evenInDoubt = false): Promise<void> => {
    try {
      const copy = await app.rigFrom(id, { evenInDoubt }, beside);
      if (copy.ok) run(copy.value, `Rig copied from ${name}`) && onDone();
      else if (isInDoubt(copy.problem)) setAsking({ id, name, doubt: copy.problem });
      else complain(copy.problem);
    } catch {
      raise(`${name} could not be read.`);
    }
  };
  return (
    <>
      <h2 class="section-title soft">Rig of another day</h2>
      {asking && (
        <div class="section">
          <InDoubtQuestion
            doubt={asking.doubt}
            anyway={`Use the rig from ${asking.name} anyway`}
            onAnyway={() => void lay(asking.id, asking.name, true)}
            onLeave={() => setAsking(null)}
          />
        </div>
      )}
      <ul class="rows">
        {others.map(({ id, production, label, date, sample, takes }) => {
          const name =
            [sample ? 'Sample' : '', production, label].filter(Boolean).join(' · ') || 'Untitled day';
          return (
            <li key={id}>
              <Row
                title={`From ${name}`}
                under={[date, countOf(takes, 'take')].filter(Boolean).join(' · ')}
                word="use"
                onTap={() => void lay(id, name)}
              />
            </li>
          );
        })}
      </ul>
    </>
  );
}

const EXAMPLE = '16 tracks, 4 mic/line, 8 slots';

const KINDS = 'Tracks, then inputs by kind: mic, line, AES3, return, slot, network.';

function InABreath({ beside, onDone }: Laying) {
  const run = useRun();
  const [typed, setTyped] = useState('');
  const read = readRigSpec(typed);
  const lay = (event: Event): void => {
    event.preventDefault();
    if (!read.ok) complain(read.problem);
    else if (beside) run(layRecorderBeside(read.value, beside), `${beside.name} set up`) && onDone();
    else run(layRecorder(read.value), 'Recorder set up') && onDone();
  };
  return (
    <form class="section" onSubmit={lay}>
      <h2>Or describe the recorder</h2>
      <TextField label="Tracks and inputs" value={typed} onInput={setTyped} placeholder={EXAMPLE} />
      <p class="rig-reading" aria-live="polite" data-understood={read.ok}>
        {typed.trim() === '' ? KINDS : read.ok ? specWords(read.value) : sentenceFor(read.problem)}
      </p>
      <Button look="solid" class="rig-lay" type="submit" disabled={!read.ok}>
        Use this recorder
      </Button>
    </form>
  );
}
