import { useState } from 'preact/hooks';
import { addListener, BOOM_OPERATOR, handOut } from '../../../app/commands/listeners.ts';
import { freshCells } from '../../../app/commands/upkeep.ts';
import { type Listener, listenersOf, receiversShared, stillOut } from '../../../day/answers/listeners.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { Page } from '../../frame/page/page.tsx';
import { PrepTop } from '../../frame/prep/prep-top.tsx';
import { useNow } from '../../frame/prep/use-now.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { countOf } from '../../words/chain.ts';
import { listenerWords, sharedWords } from '../../words/listeners.ts';
import { DeviceRow } from '../device-row.tsx';
import { clockOf } from '../words.ts';
import { ListenerSheet } from './listener-sheet.tsx';
import '../upkeep.css';

const USUAL = ['Director', 'Script supervisor', BOOM_OPERATOR, 'Video village', 'Client'] as const;

/** Who hears the sound as it is made, on which receiver, and who has it now. */
export function Listeners() {
  const day = useDay().day.value;
  const now = useNow();
  const run = useRun();
  const [open, setOpen] = useState<string | null>(null);
  const listeners = listenersOf(day);
  const out = stillOut(day).length;
  const fresh = (): boolean =>
    run(freshCells(listeners.map(({ id }) => id)), `Fresh batteries in all ${listeners.length}`);
  const cells = ({ cellsAtMs }: Listener): string =>
    cellsAtMs === null ? 'not marked fresh' : `fresh ${clockOf(cellsAtMs, now.zone, now.atMs)}`;
  return (
    <Page
      tab="listeners"
      foot={
        listeners.length > 0 && (
          <div class="prep-foot">
            <Button onClick={fresh}>Fresh batteries in all {listeners.length}</Button>
          </div>
        )
      }
    >
      <PrepTop title="Listeners">
        {out > 0 ? `${countOf(out, 'receiver')} handed out` : 'no receiver handed out'}
      </PrepTop>
      {receiversShared(day).map((shared) => (
        <p key={shared.receiver} class="section warn">
          {sharedWords(shared)}
        </p>
      ))}
      <ul class="device-rows">
        {listeners.map((one) => (
          <DeviceRow
            key={one.id}
            name={one.name}
            under={[listenerWords(one), cells(one)].filter(Boolean).join(' · ')}
            onAbout={() => setOpen(one.id)}
            action={{
              word: one.handedOut ? 'Returned' : 'Hand out',
              label: one.handedOut ? `${one.name}: returned` : `${one.name}: hand out`,
              onTap: () =>
                run(
                  handOut([one.id], !one.handedOut),
                  `${one.receiver || 'Receiver'} ${one.handedOut ? 'returned by' : 'handed to'} ${one.name}`,
                ),
            }}
          />
        ))}
      </ul>
      <AddListener listeners={listeners} />
      {open !== null && <ListenerSheet id={open} onClose={() => setOpen(null)} />}
    </Page>
  );
}

/** The usual ones in a tap each; anybody else by name. */
function AddListener({ listeners }: { listeners: readonly Listener[] }) {
  const store = useDay();
  const run = useRun();
  const [typed, setTyped] = useState<string | null>(null);
  const add = (name: string): boolean => run(addListener(store.newId(), name), `${name.trim()} added`);
  const usual = USUAL.filter((name) => !listeners.some((one) => one.name === name));
  return (
    <section class="section" aria-labelledby="add-listener">
      <h2 id="add-listener">Who else hears</h2>
      <div class="buttons">
        {usual.map((name) => (
          <Button key={name} onClick={() => add(name)}>
            {name}
          </Button>
        ))}
        <Button expanded={typed !== null} onClick={() => setTyped(typed === null ? '' : null)}>
          Somebody else
        </Button>
      </div>
      {typed !== null && (
        <form
          class="name-form"
          onSubmit={(event) => {
            event.preventDefault();
            if (add(typed)) setTyped(null);
          }}
        >
          <TextField label="Name or job" value={typed} onInput={setTyped} capitals="words" />
          <Button type="submit" disabled={typed.trim() === ''}>
            Add
          </Button>
        </form>
      )}
    </section>
  );
}
