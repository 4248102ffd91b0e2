import type { DayId } from '../../facts/envelope.ts';
import { LeftHeld } from '../parts/left-held.tsx';
import { goTo, opensWith } from '../route.ts';

/** An address can name any day. One that this phone does not have is not begun by looking for it. */
export function NoSuchDay({ day }: { day: DayId }) {
  return (
    <main class="section empty">
      <LeftHeld day={day} />
      <h1>No such day on this phone</h1>
      <p>
        It may have been erased here, or the link is of another phone: a day comes over as a day file, not as
        a link.
      </p>
      <a class="button button-solid as-button" href="#/">
        All days
      </a>
      <button
        type="button"
        class="button"
        onClick={() => {
          opensWith.value = 'new-day';
          goTo({ at: 'days' });
        }}
      >
        New day
      </button>
    </main>
  );
}
