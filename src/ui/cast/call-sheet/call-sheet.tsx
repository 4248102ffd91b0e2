import { useMemo, useState } from 'preact/hooks';
import {
  addCallSheet,
  type CallSheet,
  planCast,
  planScenes,
  readCallSheet,
  recastIn,
  turnedRound,
  withSeason,
} from '../../../app/commands/call-sheet.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { useSeason } from '../../frame/use-season.ts';
import { Button } from '../../kit/button.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { MendForm, type Mending } from './mend-form.tsx';
import { type Mend, type Mends, withMends } from './mended.ts';
import { Reading } from './read-rows.tsx';
import { type Answered, asAnswered, stillAsked } from './recast.ts';
import { RecastList } from './recast-list.tsx';
import { LONGEST, SheetText } from './sheet-text.tsx';
import { addedWords, toAddWords } from './words.ts';

const NOTHING: CallSheet = { scenes: [], cast: [], aside: [], unread: [], headings: [] };
const AS_READ: Mends = new Map();
const NOT_ASKED: Answered = new Map();

/** A call sheet, read as it is pasted or opened. Every row can be mended; lines not understood stay in the field. */
export function CallSheetImport({ onClose }: { onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const [text, setText] = useState('');
  const [mends, setMends] = useState(AS_READ);
  const [turned, setTurned] = useState(false);
  const [mending, setMending] = useState<Mending | null>(null);
  const [left, setLeft] = useState(false);
  const [answered, setAnswered] = useState(NOT_ASKED);
  const read = useMemo(() => (text.length > LONGEST ? NOTHING : readCallSheet(text)), [text]);
  const season = useSeason();
  const day = store.day.value;
  const sheet = useMemo(() => {
    const mended = withMends(read, mends);
    const asRead = { ...mended, cast: turned ? turnedRound(mended.cast) : mended.cast };
    return withSeason(asRead, day, season, (line) => !mends.has(line));
  }, [read, mends, turned, day, season]);
  const recast = recastIn(planCast(day, sheet.cast));
  const asked = stillAsked(recast, answered);
  const cast = asAnswered(sheet.cast, answered);
  const people = planCast(day, cast);
  const scenes = planScenes(day, sheet.scenes);
  const doing = toAddWords(people, scenes);

  const say = (next: string): void => {
    setText(next);
    setMends(AS_READ);
    setAnswered(NOT_ASKED);
  };
  const mend = (line: number, said: Mend): void => {
    setMends(new Map([...mends, [line, said]]));
    setMending(null);
  };
  const add = (): void => {
    if (!run(addCallSheet({ cast, scenes: sheet.scenes }, store.newId), addedWords(people, scenes))) return;
    say(sheet.unread.map((line) => line.text).join('\n'));
    setLeft(true);
    if (sheet.unread.length === 0) onClose();
  };

  if (mending) return <MendForm mending={mending} onMend={mend} onBack={() => setMending(null)} />;
  return (
    <Sheet
      title="Call sheet"
      under="Paste it, or open a file: text, CSV, a web page or PDF"
      onClose={onClose}
      foot={
        <Button
          look={doing === '' || asked ? 'outline' : 'solid'}
          class="cast-add"
          disabled={doing === '' || asked !== undefined}
          onClick={add}
        >
          {asked ? `Say who plays ${asked.known.part || asked.known.person}` : doing || 'Nothing to add yet'}
        </Button>
      }
    >
      <SheetText text={text} onText={say} left={left} />
      <RecastList recast={recast} answered={answered} onAnswer={setAnswered} />
      <Reading
        people={people}
        scenes={scenes}
        sheet={sheet}
        turned={turned}
        onTurn={sheet.cast.some(({ sure, person }) => !sure && person !== '') ? setTurned : undefined}
        onMend={setMending}
      />
    </Sheet>
  );
}
