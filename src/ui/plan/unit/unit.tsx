import { useMemo, useState } from 'preact/hooks';
import { wayBack } from '../../../app/commands/recorders.ts';
import { recordersOf } from '../../../day/recorders/rolling.ts';
import { useDay } from '../../frame/context.ts';
import { Page } from '../../frame/page/page.tsx';
import { PrepTop } from '../../frame/prep/prep-top.tsx';
import { Choice } from '../../kit/field.tsx';
import { listOf } from '../../words/chain.ts';
import { recorderName } from '../../words/recorder-names.ts';
import { BackAgain } from './back-again.tsx';
import { MoveOut } from './move-out.tsx';
import '../plan.css';

/** The unit goes to other recorders, and back again: who rolls, the moves, and one tap for all of them. */
export function MoveUnit() {
  const day = useDay().day.value;
  const back = useMemo(() => wayBack(day), [day]);
  const [where, setWhere] = useState<'back' | 'on'>('back');
  if (recordersOf(day).length === 1) {
    return (
      <Page tab="unit">
        <PrepTop title="Move the unit" />
        <p class="section">There is one recorder. Add the one to move to under Rig, Recorder.</p>
      </Page>
    );
  }
  const backTo = back ? listOf(back.recorders.map((id) => recorderName(day, id))) : '';
  const top = (
    <>
      <PrepTop title="Move the unit" />
      {back && (
        <div class="section">
          <Choice
            label="Where to"
            value={where}
            options={[
              { value: 'back', name: `Back again to ${backTo}` },
              { value: 'on', name: 'Elsewhere' },
            ]}
            onChoose={setWhere}
          />
        </div>
      )}
    </>
  );
  return back && where === 'back' ? <BackAgain top={top} back={back} to={backTo} /> : <MoveOut top={top} />;
}
