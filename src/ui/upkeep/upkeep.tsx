import { useState } from 'preact/hooks';
import { dueCount, upkeepAt } from '../../upkeep/due/day-due.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { PrepTop } from '../frame/prep/prep-top.tsx';
import { useNow } from '../frame/prep/use-now.ts';
import { Button } from '../kit/button.tsx';
import { lazy } from '../kit/lazy.tsx';
import { countOf } from '../words/chain.ts';
import { CardSheet } from './card-sheet.tsx';
import { CellsSection } from './cells-section.tsx';
import { DeviceSheet } from './device-sheet.tsx';
import { Due } from './due.tsx';
import { MediaSection } from './media-section.tsx';
import { CartSection, FarBoxSection } from './run-sections.tsx';
import { RunSheet } from './run-sheet.tsx';
import { ShiftSection } from './shift-section.tsx';
import { TimecodeSection } from './timecode-section.tsx';
import { Wiring } from './wiring.tsx';
import './upkeep.css';
import '../frame/prep/print.css';

const CompareSheet = lazy(() => import('./compare-sheet.tsx').then((part) => part.CompareSheet));

type Open =
  | { readonly device: string | undefined }
  | { readonly compare: true }
  | { readonly card: string | undefined }
  | { readonly run: string | undefined; readonly type: 'network' | 'dc' }
  | null;

/** What needs watching besides the takes: what is due and when, then what that is computed from. */
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
          <Button onClick={() => setOpen({ device: undefined })}>Add device</Button>
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
      <TimecodeSection
        day={day}
        upkeep={upkeep}
        now={now}
        onDevice={(device) => setOpen({ device })}
        onCompare={() => setOpen({ compare: true })}
      />
      <MediaSection day={day} upkeep={upkeep} now={now} onCard={(card) => setOpen({ card })} />
      <FarBoxSection day={day} onRun={(run, type) => setOpen({ run, type })} />
      <CartSection day={day} onRun={(run, type) => setOpen({ run, type })} />
      {open && 'device' in open && <DeviceSheet id={open.device} onClose={close} />}
      {open && 'compare' in open && <CompareSheet onClose={close} />}
      {open && 'card' in open && <CardSheet id={open.card} onClose={close} />}
      {open && 'run' in open && <RunSheet id={open.run} type={open.type} onClose={close} />}
    </Page>
  );
}
