import { useEffect, useState } from 'preact/hooks';
import { type FileRead, type Regained, readAsFarAsPossible } from '../../app/regain.ts';
import { useApp } from '../context.ts';
import { LongField } from '../parts/field.tsx';
import { Row } from '../parts/row.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { goTo } from '../route.ts';
import { complain, tell } from '../saying.ts';
import { countOf } from '../words/chain.ts';
import { titleOf } from '../words/days.ts';
import { damageWords, regainedWords } from '../words/regained.ts';
import { readDayFiles } from './arrivals.ts';

type Stage =
  | { readonly at: 'choose' }
  | { readonly at: 'damaged'; readonly reads: readonly FileRead[] }
  | { readonly at: 'done'; readonly reads: readonly FileRead[]; readonly regained: Regained };

interface TakeInProps {
  /** Files that came from outside the app: they need not be chosen. */
  readonly reads?: readonly FileRead[];
  readonly onClose: () => void;
}

const NOTHING: readonly FileRead[] = [];

/**
 * Takes in day files, one or many: what is new is added, what is known is left, a contradiction is refused whole. Of a
 * damaged file it says first what can be had, and takes that only when told to.
 */
export function TakeInSheet({ reads: given = NOTHING, onClose }: TakeInProps) {
  const app = useApp();
  const [pasted, setPasted] = useState('');
  const [stage, setStage] = useState<Stage>({ at: 'choose' });

  const takeIn = async (reads: readonly FileRead[]): Promise<void> => {
    const regained = await app.regain(reads);
    const [first] = regained.refused;
    const [day] = regained.days;
    if (first && !day) return complain(first.problem);
    if (reads.length > 1 || reads.some(({ damage }) => damage) || !day)
      return setStage({ at: 'done', reads, regained });
    tell(
      `${countOf(regained.fresh, 'new entry', 'new entries')}, ${regained.entries - regained.fresh} known`,
    );
    goTo({ at: 'day', day, tab: 'now' });
  };
  const look = async (reads: readonly FileRead[]): Promise<void> => {
    const [only] = reads;
    if (reads.length === 1 && only?.damage && !only.file) complain(only.damage.problem);
    else if (reads.some(({ damage }) => damage)) setStage({ at: 'damaged', reads });
    else await takeIn(reads);
  };
  const read = async (files: readonly File[]): Promise<void> => {
    const reads = await readDayFiles(files);
    if ('code' in reads) complain(reads);
    else await look(reads);
  };
  useEffect(() => {
    if (given.length > 0) void look(given);
  }, []);
  if (stage.at !== 'choose') {
    return <Outcome stage={stage} onTake={() => void takeIn(stage.reads)} onClose={onClose} />;
  }
  return (
    <Sheet
      title="Take in a day file"
      under="From another phone, or copies you kept, several at once. New entries are added; nothing here is overwritten."
      onClose={onClose}
      foot={
        pasted !== '' && (
          <button
            type="button"
            class="button button-solid"
            onClick={() => void look([readAsFarAsPossible('What was pasted', pasted)])}
          >
            Take in what was pasted
          </button>
        )
      }
    >
      <div class="section">
        <label class="field">
          <span>Choose one file or several</span>
          <input
            type="file"
            multiple
            accept=".txt,.json,text/plain"
            onChange={(event) => void read([...(event.currentTarget.files ?? [])])}
          />
        </label>
        <LongField label="Or paste its text" value={pasted} onInput={setPasted} />
      </div>
    </Sheet>
  );
}

interface OutcomeProps {
  readonly stage: Exclude<Stage, { at: 'choose' }>;
  readonly onTake: () => void;
  readonly onClose: () => void;
}

/** What the files hold, before a damaged one is taken in; and what came of it afterwards. */
function Outcome({ stage, onTake, onClose }: OutcomeProps) {
  const { days } = useApp();
  const taken = stage.at === 'done' ? stage.regained.days : [];
  const canTake = stage.at === 'damaged' && stage.reads.some(({ file }) => file);
  return (
    <Sheet
      title={stage.at === 'done' ? 'Taken in' : 'Not every file is whole'}
      {...(stage.at === 'done' ? { under: regainedWords(stage.reads, stage.regained) } : {})}
      onClose={onClose}
      foot={
        canTake && (
          <button type="button" class="button button-solid" onClick={onTake}>
            Take in what can be read
          </button>
        )
      }
    >
      <ul class="rows">
        {stage.reads.map((one) => (
          <li key={one.name}>
            <Row mark={one.damage ? 'broken' : 'single'} title={one.name} under={damageWords(one)} />
          </li>
        ))}
        {days.value
          .filter(({ id }) => taken.includes(id))
          .map((day) => (
            <li key={day.id}>
              <Row
                title={titleOf(day)}
                under="taken in"
                word="open"
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'now' })}
              />
            </li>
          ))}
      </ul>
    </Sheet>
  );
}
