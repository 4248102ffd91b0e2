import type { NotKept } from '../../../app/ports.ts';
import { useApp } from '../context.ts';

const WORDS: Record<NotKept, string> = {
  refused:
    'Not kept: this browser allows no storage, so everything is lost when the window closes. Export the day before that.',
  newer:
    'Not kept: a newer version of the app has changed the database on this phone. Your days are in it, untouched. Close all windows of the app and open it again to get that version.',
};

/** Says that nothing is being saved, and why. */
export function NotKeptBanner() {
  const { kept, because } = useApp().parts.journal.state;
  if (kept) return null;
  return (
    <p class="banner" role="alert">
      {WORDS[because ?? 'refused']}
    </p>
  );
}
