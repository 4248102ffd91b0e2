import { useLayoutEffect, useState } from 'preact/hooks';
import type { Day } from '../../../day/model.ts';
import { latestSent } from '../../../day/wrap/sent-reports.ts';
import { reportToSend } from '../../../report/revision/report-to-send.ts';
import { nextLetter } from '../../../report/revision/revision.ts';
import { afterNextPaint } from '../../kit/after-next-paint.ts';
import { Button } from '../../kit/button.tsx';
import { sentWords, wrapWords } from '../../words/closing.ts';
import { useDatabase, useDay } from '../context.ts';
import { goTo } from '../route.ts';
import { modelOf } from '../sending/report-model.ts';

interface ClosingNoteProps {
  /** How many lines of the report differ from the one sent; null until that is known. */
  readonly changes: number | null;
  /** Where a revision is sent: missing on the page that does it. */
  readonly onRevise?: () => void;
}

/** Who wrapped the day, which report went out, and what came since; nothing while neither happened. */
export function ClosingNote({ changes, onRevise }: ClosingNoteProps) {
  const day = useDay().day.value;
  const own = useDatabase();
  const wrap = day.wrap;
  const sent = latestSent(day);
  if (!wrap && !sent) return null;
  return (
    <div class="section safety" role="status">
      {wrap && <p>{wrapWords(day, wrap, own)}</p>}
      {sent && <p>{sentWords(day, sent, changes, own)}</p>}
      {sent && onRevise && changes !== null && changes > 0 && (
        <Button onClick={onRevise}>Revision {nextLetter(sent.letter)}</Button>
      )}
    </div>
  );
}

/** The same where the report is not made anyway; it is compared after the paint, since that takes a while. */
export function ClosingNoteOfDay() {
  const day = useDay().day.value;
  const [changes, setChanges] = useState<number | null>(null);
  useLayoutEffect(() => afterNextPaint(() => setChanges(changesSinceSent(day))), [day]);
  return <ClosingNote changes={changes} onRevise={() => goTo({ at: 'day', day: day.id, tab: 'wrap' })} />;
}

/** Open matters that the day does not show itself stay as they were sent: they are no change of the day. */
function changesSinceSent(day: Day): number | null {
  const sent = latestSent(day);
  if (!sent) return null;
  const { revision, again } = reportToSend(day, sent.made.matters, modelOf);
  return again ? 0 : (revision?.changes.length ?? 0);
}
