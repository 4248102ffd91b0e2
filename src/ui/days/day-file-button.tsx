import { useEffect, useState } from 'preact/hooks';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { safeName } from '../../day/safe-name.ts';
import { useApp } from '../context.ts';
import { device } from '../device.ts';
import { complain, tell } from '../saying.ts';

const SEND_WORD = {
  share: 'Share the day file',
  download: 'Download the day file',
  copy: 'Copy the day file',
} as const;

interface DayFileProps {
  readonly day: string;
  /** Another value whenever the day has another entry, so that the file is made anew. */
  readonly facts: number;
  readonly date: string;
  readonly title: string;
  readonly quiet?: boolean;
}

/** Sends the day file off the phone by the best way there is, and notes that it left. */
export function DayFileButton({ day, facts, date, title, quiet = false }: DayFileProps) {
  const app = useApp();
  const [file, setFile] = useState<OutgoingFile | null>(null);
  // The copy is made before the tap: the share sheet opens only straight from one.
  useEffect(() => {
    let wanted = facts >= 0;
    void app.dayFile(day).then((content) => {
      const name = safeName(`${date} ${title} day file`.trim(), 'txt');
      if (wanted) setFile({ name, type: 'text/plain', content });
    });
    return () => {
      wanted = false;
    };
  }, [app, day, facts, date, title]);

  const route = file ? routeFor(device, [file]) : 'download';
  const send = async (): Promise<void> => {
    if (!file) return;
    const result = await sendFiles(device, route, [file], title);
    if (!result.ok) return complain(result.problem);
    if (!result.value.sent) return;
    await (await app.open(day)).copied();
    await app.refreshDays();
    tell('A copy of the day has left the phone');
  };
  return (
    <button
      type="button"
      class={quiet ? 'button' : 'button button-solid'}
      disabled={!file}
      onClick={() => void send()}
    >
      {SEND_WORD[route]}
    </button>
  );
}
