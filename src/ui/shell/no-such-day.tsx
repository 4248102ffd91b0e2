import type { DayId } from '../../day/model.ts';
import { useApp } from '../frame/context.ts';
import { Unsaved } from '../frame/page/unsaved.tsx';
import { goTo, opensWith } from '../frame/route.ts';
import { Button } from '../kit/button.tsx';

/**
 * An address can name any day. Looking for a day this phone does not have does not start it; a day started
 * while the phone was full is only in memory, and offered here.
 */
export function NoSuchDay({ day }: { day: DayId }) {
  const isHeld = useApp().unsaved.countOf(day) > 0;
  return (
    <main>
      {isHeld && <Unsaved day={day} isNamed />}
      <div class="section empty">
        <h1>{isHeld ? 'This day is not saved' : 'No such day on this phone'}</h1>
        <p>
          {isHeld
            ? 'It was not saved when the app was closed. Free some space, then restore it.'
            : 'It may have been erased, or the link is from another phone: send a day file instead of a link.'}
        </p>
        <a class={isHeld ? 'button as-button' : 'button button-solid as-button'} href="#/">
          All days
        </a>
        <Button
          onClick={() => {
            opensWith.value = 'new-day';
            goTo({ at: 'days' });
          }}
        >
          New day
        </Button>
      </div>
    </main>
  );
}
