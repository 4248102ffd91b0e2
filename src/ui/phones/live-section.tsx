import { useState } from 'preact/hooks';
import { type LiveState, liveState } from '../../app/live/live-state.ts';
import { refusedHere } from '../../app/live/refusals.ts';
import { useApp, useDay } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { AskSheet } from './ask-sheet.tsx';
import { JoinSheet } from './join-sheet.tsx';
import { MemberList, useMembers } from './members.tsx';
import { ScanSheet } from './scan-sheet.tsx';
import { refusedWords } from './sealed-words.ts';

/** Whether the day is live, how it stands, and the codes that let others in. */
export function LiveSection() {
  const { places, start, stop } = useApp().parts.live ?? {};
  const store = useDay();
  const { id } = store.day.value;
  const [open, setOpen] = useState<'scan' | 'join' | 'ask' | null>(null);
  const state = liveState.value;
  const members = useMembers();
  const refused = refusedHere.value;
  const isRemoved = store.readsOnly.value === 'removed';
  if (!places) return null;
  const isLive = places.of(id) !== undefined;
  const leave = (): void => {
    places.keep(id, undefined);
    stop?.();
    setOpen(null);
    start?.(id);
  };
  const close = (): void => setOpen(null);
  return (
    <>
      <section class="section" aria-labelledby="phones-live">
        <h2 id="phones-live">Live</h2>
        <p role="status">
          {isLive
            ? liveWords(state, isRemoved)
            : 'Where there is a network, phones share a live day at once.'}
        </p>
        {members?.isRenewed && (
          <p class="warn">
            A copy of this phone writes as this one, so this one has made itself a new key. Scan a new join
            code of the owner’s phone, then ask to write: until then what is entered here is not shared.
          </p>
        )}
        {isLive && refused && <p class="soft">{refusedWords(refused)}</p>}
        <div class="live-actions">
          {isLive && <Button onClick={() => setOpen('join')}>Let a phone join</Button>}
          {isLive && members?.mayAsk && <Button onClick={() => setOpen('ask')}>Ask to write</Button>}
          <Button onClick={() => setOpen('scan')}>{isLive ? 'Scan a live code' : 'Go live'}</Button>
          {isLive && (
            <Button look="bare" onClick={leave}>
              Leave live
            </Button>
          )}
        </div>
        {open === 'scan' && <ScanSheet day={id} onClose={close} />}
        {open === 'join' && <JoinSheet isOwner={members?.isOwner ?? false} onClose={close} />}
        {open === 'ask' && <AskSheet onClose={close} />}
      </section>
      {isLive && members && <MemberList members={members} />}
    </>
  );
}

function liveWords(state: LiveState | null, isRemoved: boolean): string {
  if (!state) return 'Live in another window of this phone.';
  if (state.is === 'catching-up') return `Catching up: ${countOf(state.left, 'message')} to read.`;
  if (state.is === 'live' && state.lacksKey)
    return isRemoved
      ? 'This phone was removed from the day: what follows is sealed with a key that it does not have.'
      : 'A phone was removed, and this one does not have the new key. Let it scan a new join code of the owner’s phone; until then it neither reads what is new nor shares what is entered here.';
  if (state.problem) return sentenceFor(state.problem);
  if (state.is === 'alone')
    return 'Alone: no server answers yet. What is entered here is shared when one does.';
  return state.owes
    ? 'Live: what was entered here is on its way to the server.'
    : 'Live: everything entered here is on the server, and everything there is here.';
}
