import { useEffect, useState } from 'preact/hooks';
import { type Members, membersHere, putOff } from '../../app/live/phone-live.ts';
import { useApp, useDay } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { holderWords } from '../words/phones.ts';

type Member = Members['others'][number];

const ROLES: Readonly<Record<Member['role'], string>> = {
  owner: 'owns the day',
  writer: 'writes',
  onlooker: 'looks on',
  removed: 'removed',
};

/** Who may write on the open day; null while it is not known, and where this phone has no keys of it. */
export function useMembers(): Members | null {
  const app = useApp();
  const { id, facts } = useDay().day.value;
  const [members, setMembers] = useState<Members | null>(null);
  const count = facts.length;
  // The fold edits its list of facts in place, so its length says whether there is more.
  useEffect(() => {
    let isOver = false;
    void membersHere(app, id).then((now) => {
      if (!isOver) setMembers(now);
    });
    return () => {
      isOver = true;
    };
  }, [app, id, count]);
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
      {leaving && <PutOffSheet member={leaving} onClose={() => setLeaving(null)} />}
    </section>
  );
}

function PutOffSheet({ member, onClose }: { member: Member; onClose: () => void }) {
  const app = useApp();
  const { id } = useDay().day.value;
  const name = member.name || 'this phone';
  const remove = async (): Promise<void> => {
    const done = await putOff(app, id, member);
    onClose();
    if (done.ok) tell(`${member.name || 'The phone'} is removed from the day`);
    else complain(done.problem);
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
      <p class="section">
        What it entered up to now stays. What it enters from now on counts on no phone. It keeps what it has,
        and its key still opens what is added to this day.
      </p>
    </Sheet>
  );
}
