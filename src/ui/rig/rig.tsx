import { useState } from 'preact/hooks';
import { answersNow } from '../../day/answers/answers.ts';
import type { PartId } from '../../day/model.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { RecordersSheet } from '../frame/sheets/recorders-sheet.tsx';
import { Button } from '../kit/button.tsx';
import { AddSheet } from './add-sheet.tsx';
import { BlockSheet } from './block-sheet.tsx';
import { PLUG, TUNE } from './block-tasks.ts';
import { EmptyRig } from './empty-rig.tsx';
import { PartSheet } from './part-sheet.tsx';
import { PrepLinks } from './prep-links.tsx';
import { Receivers } from './receiver-list.tsx';
import { RecorderLists, RecordersRow } from './recorder-lists.tsx';
import { Packs, Selectors } from './rig-lists.tsx';
import { BankSheet } from './selector-sheet.tsx';
import { StartOver, Struck } from './struck.tsx';
import './rig.css';

type Open =
  | { readonly part: PartId }
  | { readonly bank: string }
  | { readonly sheet: 'recorders' | 'add' | 'plug' | 'tune' }
  | null;

/** The rig as it stands, in sections that open; or the ways to set one up. */
export function Rig() {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(null);
  const close = (): void => setOpen(null);
  if (day.rig.byId.size === 0) {
    return (
      <Page tab="rig">
        <EmptyRig />
      </Page>
    );
  }
  const lists = { day, answers: answersNow(day), onPart: (part: PartId) => setOpen({ part }) };
  return (
    <Page tab="rig" foot={<RigFoot onOpen={(sheet) => setOpen({ sheet })} />}>
      <h1 class="unseen">Rig</h1>
      <RecordersRow day={day} onTap={() => setOpen({ sheet: 'recorders' })} />
      <RecorderLists {...lists} />
      <Receivers {...lists} />
      <Selectors {...lists} onBank={(bank) => setOpen({ bank })} />
      <Packs {...lists} />
      <PrepLinks />
      <Struck />
      <StartOver />
      {open && 'part' in open && <PartSheet id={open.part} onClose={close} />}
      {open && 'bank' in open && <BankSheet bank={open.bank} onClose={close} />}
      {open && 'sheet' in open && open.sheet === 'recorders' && <RecordersSheet onClose={close} />}
      {open && 'sheet' in open && open.sheet === 'add' && <AddSheet onClose={close} />}
      {open && 'sheet' in open && open.sheet === 'plug' && <BlockSheet task={PLUG} onClose={close} />}
      {open && 'sheet' in open && open.sheet === 'tune' && <BlockSheet task={TUNE} onClose={close} />}
    </Page>
  );
}

/** Actions on many parts at once, near the thumb. */
function RigFoot({ onOpen }: { onOpen: (sheet: 'add' | 'plug' | 'tune') => void }) {
  return (
    <div class="rig-foot">
      <Button onClick={() => onOpen('plug')}>Patch several</Button>
      <Button onClick={() => onOpen('tune')}>Tune several</Button>
      <Button look="solid" onClick={() => onOpen('add')}>
        Add
      </Button>
    </div>
  );
}
