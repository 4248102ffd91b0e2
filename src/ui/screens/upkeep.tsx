import { useState } from 'preact/hooks';
import { dueCount, upkeepAt } from '../../upkeep/day-due.ts';
import { useDay } from '../context.ts';
import { Button } from '../kit/button.tsx';
import { Page } from '../parts/page.tsx';
import { PrepTop } from '../prep/prep-top.tsx';
import { useNow } from '../prep/use-now.ts';
import { CardSheet } from '../upkeep/card-sheet.tsx';
import { CellsSection } from '../upkeep/cells.tsx';
import { DeviceSheet } from '../upkeep/device-sheet.tsx';
import { Due } from '../upkeep/due.tsx';
import { MediaSection } from '../upkeep/media.tsx';
import { RunSheet } from '../upkeep/run-sheet.tsx';
import { CartSection, FarBoxSection } from '../upkeep/runs.tsx';
import { ShiftSection } from '../upkeep/shift.tsx';
import { TimecodeSection } from '../upkeep/timecode.tsx';
import { Wiring } from '../upkeep/wiring.tsx';
import { countOf } from '../words/chain.ts';
import '../styles/upkeep.css';
import '../styles/print.css';

type Open =
  | { readonly device: string | undefined }
  | { readonly card: string | undefined }
  | { readonly run: string | undefined; readonly type: 'network' | 'dc' }
  | null;

/** What must be kept an eye on besides the takes: who is due and when, then everything it is worked out from. */
export function Upkeep() {
  const day = useDay().day.value;
  const now = useNow();
  const [open, setOpen] = useState<Open>(null);
  const [wiring, setWiring] = useState(false);
  const close = (): void => setOpen(null);
  if (wiring) {
    return (
      <Page tab="upkeep">
        <Wiring onBack={() => setWiring(false)} />
      </Page>
    );
  }
  const upkeep = upkeepAt(day, now.atMs);
  const due = dueCount(upkeep);
  return (
    <Page
      tab="upkeep"
      foot={
        <div class="prep-foot">
          <Button onClick={() => setOpen({ device: undefined })}>Another device</Button>
          <Button look="solid" onClick={() => setWiring(true)}>
            Wiring sheet
          </Button>
        </div>
      }
    >
      <PrepTop title="Upkeep">
        {due > 0 ? <span class="warn">{countOf(due, 'thing')} due</span> : 'nothing due'}
        {upkeep.takeOpen && ' · a take is rolling: nothing before the cut'}
      </PrepTop>
      <Due day={day} upkeep={upkeep} now={now} />
      <ShiftSection day={day} now={now} />
      <CellsSection day={day} upkeep={upkeep} now={now} onDevice={(device) => setOpen({ device })} />
      <TimecodeSection day={day} upkeep={upkeep} now={now} onDevice={(device) => setOpen({ device })} />
      <MediaSection day={day} upkeep={upkeep} now={now} onCard={(card) => setOpen({ card })} />
      <FarBoxSection day={day} onRun={(run, type) => setOpen({ run, type })} />
      <CartSection day={day} onRun={(run, type) => setOpen({ run, type })} />
      {open && 'device' in open && <DeviceSheet id={open.device} onClose={close} />}
      {open && 'card' in open && <CardSheet id={open.card} onClose={close} />}
      {open && 'run' in open && <RunSheet id={open.run} type={open.type} onClose={close} />}
    </Page>
  );
}
