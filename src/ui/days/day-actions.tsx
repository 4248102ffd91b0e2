import { useState } from 'preact/hooks';
import type { DayOutline } from '../../app/ports.ts';
import { useApp } from '../frame/context.ts';
import { tell } from '../frame/messages.ts';
import { NextDay } from '../frame/next-day-button.tsx';
import { DayFileButton } from '../frame/sending/day-file-button.tsx';
import { forgetWrap, isSameWhose } from '../frame/sending/settings.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { titleOf } from '../words/day-outline.ts';

/** What can be done with a day from the list: export a copy, start the next day, erase it. */
export function DayActions({ day, onClose }: { day: DayOutline; onClose: () => void }) {
  const app = useApp();
  const [erasing, setErasing] = useState(false);

  const erase = async (): Promise<void> => {
    await app.erase(day.id);
    // Addresses of people go with the last day of their production.
    if (!app.days.peek().some((other) => isSameWhose(other, day))) forgetWrap(day);
    tell(`${titleOf(day)} erased`);
    onClose();
  };
  const outside = day.sample || (day.copiedAt !== undefined && day.copiedFacts === day.facts);
  return (
    <Sheet title={titleOf(day)} under={day.date} onClose={onClose}>
      <div class="section days-actions">
        <DayFileButton day={day} />
        <NextDay from={day.id} />
      </div>
      <div class="section days-actions">
        {erasing ? (
          <>
            <p class="warn">
              Erase {titleOf(day)} and everything in it from this phone? A backup kept elsewhere stays; there
              is no other copy.
              {!outside && ' It is not backed up: do that first.'}
            </p>
            <Button onClick={() => void erase()}>Erase from this phone</Button>
            <Button look="solid" onClick={() => setErasing(false)}>
              Keep day
            </Button>
          </>
        ) : (
          <Button onClick={() => setErasing(true)}>Erase this day</Button>
        )}
      </div>
    </Sheet>
  );
}
