import { useEffect, useState } from 'preact/hooks';
import type { DayOutline } from '../../../app/ports.ts';
import { type OutgoingFile, routeFor, sendFiles } from '../../../app/sharing.ts';
import { safeName } from '../../../day/files/safe-name.ts';
import { Button } from '../../kit/button.tsx';
import { useApp } from '../context.ts';
import { complain, tell } from '../messages.ts';
import { device } from './device.ts';

const SEND_WORD = {
  share: 'Share the day file',
  download: 'Download the day file',
  copy: 'Copy the day file',
} as const;

interface DayFileProps {
  readonly day: DayOutline;
  readonly quiet?: boolean;
}

/** Sends the day file by the best route, and records that it left the phone. */
export function DayFileButton({ day, quiet = false }: DayFileProps) {
  const app = useApp();
  const { id, facts, date } = day;
  const title = `${day.production} ${day.label}`.trim();
  const [file, setFile] = useState<OutgoingFile | null>(null);
  // Made before the tap and after every entry: the share sheet only opens straight from a tap.
  useEffect(() => {
    let wanted = facts >= 0;
    void app.dayFile(id).then((content) => {
      const name = safeName(`${date} ${title} day file`.trim(), 'txt');
      if (wanted) setFile({ name, type: 'text/plain', content });
    });
    return () => {
      wanted = false;
    };
  }, [app, id, facts, date, title]);

  const route = file ? routeFor(device, [file]) : 'download';
  const send = async (): Promise<void> => {
    if (!file) return;
    const result = await sendFiles(device, route, [file], title);
    if (!result.ok) return complain(result.problem);
    if (!result.value.sent) return;
    await (await app.open(id)).copied();
    await app.refreshDays();
    tell('Day file sent: the day is backed up');
  };
  return (
    <Button look={quiet ? 'outline' : 'solid'} disabled={!file} onClick={() => void send()}>
      {SEND_WORD[route]}
    </Button>
  );
}
