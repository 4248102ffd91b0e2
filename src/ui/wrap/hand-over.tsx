import { useState } from 'preact/hooks';
import { handOverLines } from '../../report/hand-over-lines.ts';
import { handOverText } from '../../report/printed/hand-over-words.ts';
import { useDay } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { HandOverSheet } from './hand-over-sheet.tsx';

/** What was handed over, as the report says it, and the way to hand over more. */
export function HandOverSection() {
  const day = useDay().day.value;
  const [open, setOpen] = useState(false);
  const lines = handOverLines(day);
  return (
    <section class="section report-send" aria-labelledby="hand-over-head">
      <h2 id="hand-over-head">Cards and drives</h2>
      {lines.length === 0 && <p class="soft">Nothing handed over yet.</p>}
      {lines.length > 0 && (
        <ul class="hand-overs">
          {lines.map((line, at) => (
            <li key={at}>{handOverText(line)}</li>
          ))}
        </ul>
      )}
      <Button onClick={() => setOpen(true)}>Hand over</Button>
      {open && <HandOverSheet onClose={() => setOpen(false)} />}
    </section>
  );
}
