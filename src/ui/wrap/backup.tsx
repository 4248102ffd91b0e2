import { useEffect, useState } from 'preact/hooks';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { safeName } from '../../day/safe-name.ts';
import { useApp, useDay } from '../context.ts';
import { device } from '../device.ts';
import { complain, tell } from '../saying.ts';

/** The day file: the one copy that survives a lost phone. */
export function BackupSection() {
  const app = useApp();
  const store = useDay();
  const day = store.day.value;
  const [file, setFile] = useState<OutgoingFile | null>(null);
  useEffect(() => {
    let wanted = true;
    const { date, production, label } = day.header;
    const name = safeName(`${date} ${production} ${label} day file`.trim(), 'txt');
    void app.dayFile(day.id).then((content) => {
      if (wanted) setFile({ name, type: 'text/plain', content });
    });
    return () => {
      wanted = false;
    };
  }, [app, day]);
  const route = file ? routeFor(device, [file]) : 'download';
  const send = async (): Promise<void> => {
    if (!file) return;
    const result = await sendFiles(device, route, [file], file.name);
    if (!result.ok) return complain(result.problem);
    if (!result.value.sent) return;
    await store.copied();
    tell('A copy of the day has left the phone');
  };
  return (
    <section class="section report-send" aria-labelledby="backup-head">
      <h2 id="backup-head">A copy off the phone</h2>
      <p class="soft">
        The day file has every entry of this day. It is the only copy that survives a lost phone, and another
        phone can take it in.
      </p>
      <button type="button" class="button button-solid" disabled={!file} onClick={() => void send()}>
        {route === 'share'
          ? 'Share the day file'
          : route === 'download'
            ? 'Download the day file'
            : 'Copy the day file'}
      </button>
    </section>
  );
}
