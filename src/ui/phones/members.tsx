import { useEffect, useState } from 'preact/hooks';
import { liveState } from '../../app/live/live-state.ts';
import { type Members, membersHere, putOff } from '../../app/live/phone-live.ts';
import { useApp, useDay } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { listOf } from '../words/chain.ts';
import { holderWords } from '../words/phones.ts';

type Member = Members['others'][number];

const ROLES: Readonly<Record<Member['role'], string>> = {
  owner: 'owns the day',
  writer: 'writes',
  onlooker: 'looks on',
  removed: 'removed',
};

/**
 * Who may write on the open day; undefined while it is not known, null where this phone has no keys of it.
 * Looks again whenever `again` is another.
 */
export function useMembers(again?: unknown): Members | null | undefined {
  const app = useApp();
  const { id, facts } = useDay().day.value;
  const [members, setMembers] = useState<Members | null>();
  const count = facts.length;
  const live = liveState.value?.is;
  // The fold edits its list of facts in place, so its length says whether there is more; this phone's own key may have
  // changed whenever it is live anew.
  useEffect(() => {
    let isOver = false;
    void membersHere(app, id).then((now) => {
      if (!isOver) setMembers(now);
    });
    return () => {
      isOver = true;
    };
  }, [app, id, count, live, again]);
  return members;
}

/** The phones that the owner let in; its own phone can put them off the day. */
export function MemberList({ members: { others, isOwner } }: { members: Members }) {
  const [leaving, setLeaving] = useState<Member | null>(null);
  if (others.length === 0) return null;
  return (
    <section aria-labelledby="phones-members">
      <h2 class="section-title" id="phones-members">
        May write, or did
      </h2>
      <ul class="rows">
        {others.map((member) => (
          <li key={member.writer}>
            <Row
              title={holderWords(member) || 'A phone'}
              word={ROLES[member.role]}
              onTap={isOwner && member.role === 'writer' ? () => setLeaving(member) : undefined}
            />
          </li>
        ))}
      </ul>
      {leaving && <PutOffSheet member={leaving} others={others} onClose={() => setLeaving(null)} />}
    </section>
  );
}

interface PutOffProps {
  readonly member: Member;
  readonly others: readonly Member[];
  readonly onClose: () => void;
}

function PutOffSheet({ member, others, onClose }: PutOffProps) {
  const app = useApp();
  const { id } = useDay().day.value;
  const name = member.name || 'this phone';
  const lacking = others.filter(
    (one) => one.writer !== member.writer && one.role !== 'removed' && !one.agreement,
  );
  const remove = async (): Promise<void> => {
    const done = await putOff(app, id, member);
    onClose();
    const who = member.name || 'The phone';
    if (!done.ok) complain(done.problem);
    else if (done.value.hasNewKey) tell(`${who} is removed from the day`);
    else tell(`${who} is removed, but can still read: the day has no more keys. Start a new day`);
  };
  return (
    <Sheet
      title={`Remove ${name} from the day?`}
      onClose={onClose}
      foot={
        <div class="buttons">
          <Button onClick={onClose}>Not now</Button>
          <Button look="solid" onClick={() => void remove()}>
            Remove
          </Button>
        </div>
      }
    >
      <p class="section">What it entered up to now stays. What it enters from now on counts on no phone.</p>
      <p class="section">
        It can still read everything up to now. What follows is sealed with a new key, which it does not get;
        each phone uses the new key as soon as it hears of the removal.
      </p>
      <p class="section">
        Onlookers must scan a new join code
        {lacking.length > 0 && `, and so must ${listOf(lacking.map((one) => one.name || 'a phone'))}`}. A join
        code that was shown before lets nobody in any more.
      </p>
    </Sheet>
  );
}
