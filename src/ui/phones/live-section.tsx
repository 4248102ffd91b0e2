import { useState } from 'preact/hooks';
import { type LiveState, liveState } from '../../app/live/live-state.ts';
import { refusedHere } from '../../app/live/refusals.ts';
import { useApp, useDay } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { refusedWords } from '../words/sealed.ts';
import { AskSheet } from './ask-sheet.tsx';
import { JoinSheet } from './join-sheet.tsx';
import { MemberList, useMembers } from './members.tsx';
import { ScanSheet } from './scan-sheet.tsx';

interface SharingProps {
  /** A phone was let in that has to get the day by codes. */
  readonly onLetIn: () => void;
  readonly onSealed: () => void;
}

/** Whether the day is shared or live, how it stands, and the codes that let others in. */
export function LiveSection({ onLetIn, onSealed }: SharingProps) {
  const { places, start, stop } = useApp().parts.live ?? {};
  const store = useDay();
  const { id, facts } = store.day.value;
  const [open, setOpen] = useState<'scan' | 'join' | 'ask' | null>(null);
  const state = liveState.value;
  // A code that was scanned may have brought a key.
  const members = useMembers(open);
  const refused = refusedHere.value;
  const isRemoved = store.readsOnly.value === 'removed';
  if (!places) return null;
  const isLive = places.of(id) !== undefined;
  // It came by a file: a second owner would be believed by nobody.
  const isOthers = members === null && facts.some(({ kind }) => kind === 'writer-admitted');
  const leave = (): void => {
    places.keep(id, undefined);
    stop?.();
    setOpen(null);
    start?.(id);
  };
  const close = (): void => setOpen(null);
  const stands = isLive ? liveWords(state) : isOthers ? OTHERS : members ? SHARED : NOT_SHARED;
  const words = !members?.lacksKey ? stands : isRemoved ? REMOVED : LACKS_KEY;
  return (
    <>
      <section class="section" aria-labelledby="phones-live">
        <h2 id="phones-live">Sharing</h2>
        <p role="status">{words}</p>
        {members?.isRenewed && (
          <p class="warn">
            A copy of this phone writes as this one, so this one has made itself a new key. Scan a new join
            code of the owner’s phone, then ask to write: until then what is entered here is not shared.
          </p>
        )}
        {isLive && refused && <p class="soft">{refusedWords(refused)}</p>}
        <div class="live-actions">
          {!isOthers && <Button onClick={() => setOpen('join')}>Let a phone join</Button>}
          {members?.mayAsk && <Button onClick={() => setOpen('ask')}>Ask to write</Button>}
          {(members || isOthers) && <Button onClick={() => setOpen('scan')}>Scan a code</Button>}
          {!isLive && !isOthers && <Button onClick={() => setOpen('scan')}>Go live</Button>}
          {members && <Button onClick={onSealed}>Sealed file</Button>}
          {isLive && (
            <Button look="bare" onClick={leave}>
              Leave live
            </Button>
          )}
        </div>
        {open === 'scan' && <ScanSheet day={id} onLetIn={isLive ? undefined : onLetIn} onClose={close} />}
        {open === 'join' && <JoinSheet day={id} isOwner={members?.isOwner ?? true} onClose={close} />}
        {open === 'ask' && <AskSheet day={id} onClose={close} />}
      </section>
      {members && <MemberList members={members} />}
    </>
  );
}

const NOT_SHARED =
  'Where there is a network, phones share a live day at once. Without one, let a phone join, then give it codes.';
const SHARED = 'Shared, with no network: phones that have joined give each other codes or sealed files.';
const OTHERS = 'Other phones share this day. To share it here too, scan a join code of its owner’s phone.';

const REMOVED =
  'This phone was removed from the day: what follows is sealed with a key that it does not have.';
const LACKS_KEY =
  'A phone was removed, and this one does not have the new key. Let it scan a new join code of the owner’s phone; until then it neither reads what is new nor shares what is entered here.';

function liveWords(state: LiveState | null): string {
  if (!state) return 'Not connected yet.';
  if (state.is === 'catching-up') return `Catching up: ${countOf(state.left, 'message')} to read.`;
  if (state.problem) return sentenceFor(state.problem);
  if (state.is === 'alone')
    return 'Alone: no server answers yet. What is entered here is shared when one does.';
  return state.owes
    ? 'Live: what was entered here is on its way to the server.'
    : 'Live: everything entered here is on the server, and everything there is here.';
}
