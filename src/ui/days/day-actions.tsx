import { useEffect, useState } from 'preact/hooks';
import type { DayOutline } from '../../app/ports.ts';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { safeName } from '../../day/safe-name.ts';
import { useApp } from '../context.ts';
import { device } from '../device.ts';
import { Sheet } from '../parts/sheet.tsx';
import { goTo } from '../route.ts';
import { complain, tell } from '../saying.ts';
import { titleOf } from '../words/days.ts';

const SEND_WORD = {
  share: 'Share a copy',
  download: 'Download a copy',
  copy: 'Copy the day as text',
} as const;

/** What can be done with a day from the list: a copy that leaves the phone, tomorrow from it, erasing it. */
export function DayActions({ day, onClose }: { day: DayOutline; onClose: () => void }) {
  const app = useApp();
  const [file, setFile] = useState<OutgoingFile | null>(null);
  const [erasing, setErasing] = useState(false);

  // The copy is made before the tap: the share sheet opens only straight from one.
  useEffect(() => {
    void app.dayFile(day.id).then((content) => {
      const name = safeName(`${day.date} ${day.production} ${day.label} day file`.trim(), 'txt');
      setFile({ name, type: 'text/plain', content });
    });
  }, [app, day]);

  const route = file ? routeFor(device, [file]) : 'download';
  const send = async (): Promise<void> => {
    if (!file) return;
    const result = await sendFiles(device, route, [file], titleOf(day));
    if (!result.ok) return complain(result.problem);
    if (!result.value.sent) return;
    await (await app.open(day.id)).copied();
    await app.refreshDays();
    tell('A copy has left the phone');
  };
  const tomorrow = async (): Promise<void> => {
    const result = await app.startFrom(day.id);
    if (!result.ok) complain(result.problem);
    else goTo({ at: 'day', day: result.value, tab: 'cast' });
  };
  const erase = async (): Promise<void> => {
    await app.erase(day.id);
    tell(`${titleOf(day)} erased`);
    onClose();
  };
  return (
    <Sheet title={titleOf(day)} under={day.date} onClose={onClose}>
      <div class="section days-actions">
        <button type="button" class="button button-solid" disabled={!file} onClick={() => void send()}>
          {SEND_WORD[route]}
        </button>
        <button type="button" class="button" onClick={() => void tomorrow()}>
          Start the next day from this one
        </button>
        <p class="soft">The next day gets this rig as it stands, the cast and the crew. Packs come off.</p>
      </div>
      <div class="section days-actions">
        {erasing ? (
          <>
            <p class="warn">
              Erase {titleOf(day)} and everything said in it from this phone? A copy that left the phone stays
              where it went; there is no other.
            </p>
            <button type="button" class="button" onClick={() => void erase()}>
              Erase it from this phone
            </button>
            <button type="button" class="button button-solid" onClick={() => setErasing(false)}>
              Keep it
            </button>
          </>
        ) : (
          <button type="button" class="button" onClick={() => setErasing(true)}>
            Erase this day
          </button>
        )}
      </div>
    </Sheet>
  );
}
