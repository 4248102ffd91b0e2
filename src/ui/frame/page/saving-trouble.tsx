import { Button } from '../../kit/button.tsx';
import { countOf } from '../../words/chain.ts';
import { useApp, useDay } from '../context.ts';
import { NotKeptBanner } from './not-kept.tsx';

const BECAUSE: Record<string, string> = {
  QuotaExceededError: 'the phone is full. Free some space, or export the day now.',
  InvalidStateError: 'the database was closed under the app. Close other windows of it, or open it again.',
  VersionError: 'a newer version of the app is open in another window. Reload this window.',
  UnknownError: 'the phone lost its database for a moment.',
  FactIdTwice: 'two entries have the same number. Export the day and start the app again.',
};

/** Where unsaved actions are kept meanwhile, and what happens to them when the window closes. */
function heldWords(waiting: number, inWindowOnly: boolean | undefined): string {
  const [they, them] = waiting === 1 ? ['It is', 'it'] : ['They are', 'them'];
  return inWindowOnly
    ? `${they} in this window only; saving is tried again. If it is closed, ${them === 'it' ? 'it is' : 'they are'} lost. Export the day now.`
    : `${they} not saved yet; saving is tried again. If the app is closed before, it offers ${them} when it is opened.`;
}

/** Says that something is not on the disk and why, and that it is kept and retried. */
export function SavingTrouble() {
  const store = useDay();
  const { state } = useApp().parts.journal;
  const { state: saving, waiting, because, restored, inWindowOnly } = store.saving.value;
  if (!state.kept) return <NotKeptBanner />;
  if (saving !== 'not-saved') {
    const damaged = store.damaged.value;
    const unsure = store.unsure.value;
    return (
      <>
        {restored > 0 && (
          <p class="banner" role="alert">
            The phone emptied its database while the app was open. {countOf(restored, 'entry', 'entries')} of
            this day were still in this window and are saved again; other days may be gone. Export this day
            now.
          </p>
        )}
        {damaged > 0 && (
          <p class="banner" role="alert">
            {countOf(damaged, 'entry', 'entries')} of this day cannot be read. Import a copy of the day, and
            what it has is repaired.
          </p>
        )}
        {unsure > 0 && (
          <p class="banner" role="alert">
            {countOf(unsure, 'entry', 'entries')} of this day came without a check, from a damaged file or an
            older copy: a changed letter would go unnoticed. Import a complete copy of the day, and what
            differs is repaired.
          </p>
        )}
      </>
    );
  }
  return (
    <div class="banner" role="alert">
      <p>
        {countOf(waiting, 'action')} not saved: {BECAUSE[because ?? ''] ?? `the phone reported ${because}.`}{' '}
        {heldWords(waiting, inWindowOnly)}
      </p>
      <Button onClick={store.retry}>Try now</Button>
    </div>
  );
}
