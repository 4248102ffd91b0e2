import { useState } from 'preact/hooks';
import { layRecorder, layStartingRig, readRigSpec, STARTING_RIGS } from '../../app/commands/rig.ts';
import { type InDoubt, isInDoubt } from '../../app/in-doubt.ts';
import { useApp, useDay, useRun } from '../frame/context.ts';
import { InDoubtQuestion } from '../frame/in-doubt-question.tsx';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { raise } from '../kit/messages.ts';
import { Row } from '../kit/row.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { specWords } from './words.ts';

/** No rig yet: take one from the shelf, copy another day's, or describe one in a line. */
export function EmptyRig() {
  const run = useRun();
  return (
    <>
      <div class="section">
        <h1>Set up the rig</h1>
        <p class="soft">Start with what is closest; every part can be changed later.</p>
      </div>
      <FromAnotherDay />
      <h2 class="section-title soft">Ready-made rigs</h2>
      <ul class="rows">
        {STARTING_RIGS.map((rig) => (
          <li key={rig.id}>
            <Row
              title={rig.name}
              under={rig.about}
              word="use"
              onTap={() => run(layStartingRig(rig), `${rig.name} set up`)}
            />
          </li>
        ))}
      </ul>
      <InABreath />
    </>
  );
}

const DAYS_SHOWN = 4;

function FromAnotherDay() {
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
      const copy = await app.rigFrom(id, { evenInDoubt });
      if (copy.ok) run(copy.value, `Rig copied from ${name}`);
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

function InABreath() {
  const run = useRun();
  const [typed, setTyped] = useState('');
  const read = readRigSpec(typed);
  const lay = (event: Event): void => {
    event.preventDefault();
    if (read.ok) run(layRecorder(read.value), 'Recorder set up');
    else complain(read.problem);
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
