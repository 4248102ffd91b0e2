import { useOutline } from '../context.ts';
import { DayFileButton } from '../days/day-file-button.tsx';
import { copyWords } from '../words/days.ts';

/** The day file: the one copy that survives a lost phone. */
export function BackupSection() {
  const outline = useOutline();
  return (
    <section class="section report-send" aria-labelledby="backup-head">
      <h2 id="backup-head">A copy off the phone</h2>
      <p>
        <strong>{copyWords(outline)}</strong>
      </p>
      <p class="soft">
        The day file has every entry of this day, with the names of the people in it. It is the only copy that
        survives a lost phone, and another phone can take it in.
      </p>
      <DayFileButton day={outline} />
    </section>
  );
}
