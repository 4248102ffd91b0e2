import { useState } from 'preact/hooks';
import { handOver } from '../../app/commands/report.ts';
import { readNumbers } from '../../app/commands/typed.ts';
import { describeCard } from '../../app/commands/upkeep.ts';
import type { Day } from '../../day/model.ts';
import { checkedSoFar, handOversOf, sizeOnCards } from '../../day/wrap/hand-over.ts';
import { type Stroke, strokesText } from '../../shared/strokes.ts';
import { useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Choice, TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { Toggles } from '../kit/toggles.tsx';
import { listOf } from '../words/chain.ts';
import { handOverCautions } from './hand-over-words.ts';
import { SignaturePad } from './signature-pad.tsx';

/** A card of the day, or one that is only named: its id is then empty. */
interface Carrier {
  readonly card: string;
  readonly name: string;
  readonly copies: number;
}

const NAMED = '';
const COPIES = ['0', '1', '2', '3'];
const GB = 1e9;

/** The cards of the day, those not yet handed over chosen. */
function cardsToGive(day: Day): { readonly cards: readonly Carrier[]; readonly chosen: string[] } {
  const given = new Set(handOversOf(day).flatMap(({ carriers }) => carriers.map(({ card }) => card)));
  const cards = [...day.upkeep.cards]
    .filter(([, { struck }]) => !struck)
    .map(([card, { name = '', copies = 0 }]) => ({ card, name: name || 'Card', copies }));
  return { cards, chosen: cards.map(({ card }) => card).filter((card) => !given.has(card)) };
}

/** Which cards go to whom, with a signature; filled in from the last card check and the cards of the day. */
export function HandOverSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [{ cards, chosen: first }] = useState(() => cardsToGive(day));
  const [size] = useState(() => sizeOnCards(day));
  const [last] = useState(() => handOversOf(day).at(-1));
  const [chosen, setChosen] = useState(first);
  const [other, setOther] = useState(cards.length === 0 ? 'Card' : '');
  const [copies, setCopies] = useState<Readonly<Record<string, number>>>({});
  const [to, setTo] = useState(last?.to ?? '');
  const [role, setRole] = useState(last?.role ?? '');
  const [typed, setTyped] = useState({ files: String(size.files), bytes: (size.bytes / GB).toFixed(2) });
  const [strokes, setStrokes] = useState<readonly Stroke[]>([]);
  const [signed, setSigned] = useState('');

  const named = other.trim() === '' ? [] : [{ card: NAMED, name: other.trim(), copies: 0 }];
  const carriers = [...cards.filter(({ card }) => chosen.includes(card)), ...named].map(
    (one): Carrier => ({ ...one, copies: copies[one.card] ?? one.copies }),
  );
  const check = checkedSoFar(day);
  const cautions = handOverCautions(check, carriers);
  const save = (event: Event): void => {
    event.preventDefault();
    const read = readNumbers(typed);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const { files, bytes } = read.value;
    const drawn = strokesText(strokes);
    const slip = {
      carriers: carriers.map(({ card, ...one }) => (card === NAMED ? one : { ...one, card })),
      to,
      ...(role.trim() && { role: role.trim() }),
      ...(files !== null && { files: Math.round(files) }),
      ...(bytes !== null && { bytes: Math.round(bytes * GB) }),
      checked: check.whole,
      signature: { ...(drawn && { strokes: drawn }), ...(signed.trim() && { typed: signed.trim() }) },
    };
    const counted = carriers
      .filter(({ card }) => card !== NAMED && copies[card] !== undefined)
      .map(({ card, copies }) => describeCard(card, { copies }));
    const what = listOf(carriers.map(({ name }) => name));
    if (run([handOver(slip), ...counted], `${what} handed over to ${to.trim()}`)) onClose();
  };
  return (
    <Sheet title="Hand over" under="Who has the cards and drives now; the report says it." onClose={onClose}>
      <form class="section" onSubmit={save}>
        {cards.length > 0 && (
          <Toggles
            label="Cards of the day"
            options={cards.map(({ card, name }) => ({ id: card, name }))}
            on={chosen}
            onChange={setChosen}
            named
          />
        )}
        <TextField
          label={cards.length > 0 ? 'Another card or drive' : 'Card or drive'}
          value={other}
          onInput={setOther}
          capitals="words"
        />
        {carriers.map((one) => (
          <Choice
            key={one.card}
            label={`Checked copies of ${one.name} on separate devices`}
            value={String(one.copies)}
            options={COPIES.map((value) => ({ value, name: value }))}
            onChoose={(value) => setCopies({ ...copies, [one.card]: Number(value) })}
          />
        ))}
        {cautions.length > 0 && (
          <div role="status" class="hand-over-cautions">
            {cautions.map((text) => (
              <p key={text} class="warn">
                {text}
              </p>
            ))}
          </div>
        )}
        <TextField label="To" value={to} onInput={setTo} capitals="words" />
        <TextField label="Role" value={role} onInput={setRole} placeholder="data wrangler" />
        <div class="field-pair">
          <TextField
            label="Files"
            value={typed.files}
            onInput={(files) => setTyped({ ...typed, files })}
            inputMode="numeric"
          />
          <TextField
            label="Size, GB"
            value={typed.bytes}
            onInput={(bytes) => setTyped({ ...typed, bytes })}
            inputMode="decimal"
          />
        </div>
        <p class="soft">
          {size.isFromCard ? 'As the card check counted.' : 'As logged: nothing was counted on a card.'}
        </p>
        <SignaturePad strokes={strokes} onDraw={setStrokes} />
        <TextField label="Or type the name to sign" value={signed} onInput={setSigned} capitals="words" />
        <Button look="solid" type="submit">
          Hand over
        </Button>
      </form>
    </Sheet>
  );
}
