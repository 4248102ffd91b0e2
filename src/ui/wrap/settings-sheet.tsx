import {
  type CsvColumn,
  csvColumnsFor,
  csvColumnTitle,
  DEFAULT_CSV_COLUMNS,
} from '../../report/formats/csv-columns.ts';
import { setWrap, type Whose, wrapSettings } from '../frame/sending/settings.ts';
import { Button } from '../kit/button.tsx';
import { Choice, LongField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';

interface SettingsProps {
  readonly whose: Whose;
  readonly onClose: () => void;
}

/** Paper, the table's lines and columns in order, and a signature. */
export function SettingsSheet({ whose, onClose }: SettingsProps) {
  const { paper, lines, columns, signature } = wrapSettings(whose);
  const chosen = columns[lines];
  const others = csvColumnsFor(lines).filter((id) => !chosen.includes(id));
  const set = (next: readonly CsvColumn[]): void =>
    setWrap(whose, { columns: { ...columns, [lines]: next } });
  const move = (at: number, by: number): void => {
    const next = [...chosen];
    const [column] = next.splice(at, 1);
    if (column) next.splice(Math.max(0, at + by), 0, column);
    set(next);
  };
  return (
    <Sheet
      title="How the report is made"
      under={
        whose.sample ? 'Kept for sample days.' : 'Kept on this phone; the signature for this production.'
      }
      onClose={onClose}
    >
      <div class="section">
        <Choice
          label="Paper"
          value={paper}
          options={[
            { value: 'a4', name: 'A4' },
            { value: 'letter', name: 'US Letter' },
          ]}
          onChoose={(value) => setWrap(whose, { paper: value })}
        />
        <LongField
          label="Signature, under the report"
          value={signature}
          onInput={(value) => setWrap(whose, { signature: value.slice(0, 4000) })}
        />
        <Choice
          label="The table has"
          value={lines}
          options={[
            { value: 'take', name: 'one line per take' },
            { value: 'track', name: 'one line per track and take' },
          ]}
          onChoose={(value) => setWrap(whose, { lines: value })}
        />
      </div>
      <h3 class="section-title">Columns, in order</h3>
      <ol class="rows">
        {chosen.map((id, at) => (
          <li key={id} class="wrap-column">
            <span>{csvColumnTitle(id)}</span>
            <Button disabled={at === 0} label={`${csvColumnTitle(id)}: up`} onClick={() => move(at, -1)}>
              up
            </Button>
            <Button
              disabled={at === chosen.length - 1}
              label={`${csvColumnTitle(id)}: down`}
              onClick={() => move(at, 1)}
            >
              down
            </Button>
            <Button
              disabled={chosen.length === 1}
              label={`${csvColumnTitle(id)}: remove`}
              onClick={() => set(chosen.filter((one) => one !== id))}
            >
              remove
            </Button>
          </li>
        ))}
      </ol>
      <div class="section">
        <p class="soft">Not in the table</p>
        <div class="buttons">
          {others.map((id) => (
            <Button key={id} onClick={() => set([...chosen, id])}>
              {csvColumnTitle(id)}
            </Button>
          ))}
          <Button onClick={() => set(DEFAULT_CSV_COLUMNS[lines])}>Reset</Button>
        </div>
      </div>
    </Sheet>
  );
}
