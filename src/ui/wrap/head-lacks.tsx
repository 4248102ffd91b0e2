import { useState } from 'preact/hooks';
import { changeHead } from '../../app/commands/day.ts';
import { sentReports } from '../../day/wrap/sent-reports.ts';
import type { ReportModel } from '../../report/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { RecordersSheet } from '../frame/sheets/recorders-sheet.tsx';
import { RollField, RollFrom, useRoll } from '../frame/sheets/roll-field.tsx';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { listOf } from '../words/chain.ts';

/**
 * Asks, in a line above the way to send, for what the head of the report lacks. Sending is an answer too: once a
 * report has gone out it is not asked again.
 */
export function AskForHead({ model }: { model: ReportModel }) {
  const day = useDay().day.value;
  const [entering, setEntering] = useState(false);
  const lacks = model.open.find(({ code }) => code === 'head-lacks')?.names ?? [];
  if (lacks.length === 0 || sentReports(day).length > 0) return null;
  return (
    <div class="head-lacks">
      <p>{`No ${listOf(lacks)} yet`}</p>
      <Button onClick={() => setEntering(true)}>Enter</Button>
      {entering && <HeadSheet lacks={lacks} onClose={() => setEntering(false)} />}
    </div>
  );
}

const TEXTS = [
  ['production', 'Production'],
  ['mixer', 'Sound mixer'],
] as const;

/** Only what lacks, in one place. */
function HeadSheet({ lacks, onClose }: { lacks: readonly string[]; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  // What is asked for stays, though it is entered by now.
  const [asked] = useState(lacks);
  const [fields, setFields] = useState<Partial<Record<'production' | 'mixer' | 'date', string>>>({});
  const roll = useRoll();
  const [inRecorders, setInRecorders] = useState(false);
  const hasSeveral = day.rig.recorders.length > 0;
  const save = (): void => {
    const typed = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== ''));
    const said = {
      fields: typed,
      setBefore: undefined,
      ...(roll.isSaid && { roll: { name: roll.name, before: roll.before } }),
    };
    const isSaid = Object.keys(typed).length > 0 || roll.isSaid;
    if (!isSaid || run(changeHead(said), 'Day details saved')) onClose();
  };
  if (inRecorders) return <RecordersSheet onClose={() => setInRecorders(false)} />;
  return (
    <Sheet
      title="Head of the report"
      onClose={onClose}
      foot={
        <Button look="solid" onClick={save}>
          Save
        </Button>
      }
    >
      <div class="section">
        {TEXTS.filter(([field]) => asked.includes(field)).map(([field, label]) => (
          <TextField
            key={field}
            label={label}
            value={fields[field] ?? ''}
            onInput={(value) => setFields({ ...fields, [field]: value })}
          />
        ))}
        {asked.includes('date') && (
          <TextField
            label="Date"
            type="date"
            value={fields.date ?? ''}
            onInput={(date) => setFields({ ...fields, date })}
          />
        )}
        {asked.includes('roll') && !hasSeveral && (
          <>
            <RollField {...roll} />
            <RollFrom {...roll} />
          </>
        )}
        {asked.includes('roll') && hasSeveral && (
          <Button onClick={() => setInRecorders(true)}>Rolls of the recorders</Button>
        )}
      </div>
    </Sheet>
  );
}
