import { useState } from 'preact/hooks';
import { answersNow } from '../../day/answers/answers.ts';
import { castInOrder, isFoundBy, struckFrom } from '../../day/cast-in-order.ts';
import type { Day, VoiceId } from '../../day/model.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { hrefOf } from '../frame/route.ts';
import { VoiceSheet } from '../frame/sheets/voice-sheet.tsx';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { AddSheet } from './add-sheet.tsx';
import { CallSheetImport } from './call-sheet/open-call-sheet.ts';
import { Found } from './found.tsx';
import { StruckList } from './struck-list.tsx';
import { useFocus } from './use-focus.ts';
import { VoiceRow } from './voice-row.tsx';

export type CastTask = 'needed' | 'order';
type Open = { readonly voice: VoiceId } | 'add' | 'sheet' | null;

interface RollProps {
  readonly onTask: (task: CastTask) => void;
  /** The task that just ended: focus returns to the control that began it. */
  readonly cameFrom: CastTask | null;
}

/** The cast as it stands: how everybody is recorded, or where the chain breaks. */
export function CastRoll({ onTask, cameFrom }: RollProps) {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(null);
  const [typed, setTyped] = useState('');
  const cast = castInOrder(day);
  const answers = new Map(answersNow(day).voices.map((answer) => [answer.voice.id, answer]));
  const shown = cast.filter((voice) => isFoundBy(voice, typed));
  const close = (): void => setOpen(null);
  return (
    <Page
      tab="cast"
      foot={
        <Foot
          empty={!cast.some(({ kind }) => kind === 'performer')}
          onOpen={setOpen}
          onTask={onTask}
          cameFrom={cameFrom}
        />
      }
    >
      <CastHead day={day} onOrder={() => onTask('order')} cameFrom={cameFrom} />
      <Found all={cast.length} shown={shown.length} typed={typed} onInput={setTyped} />
      <ul class="rows rows-two cast-rows">
        {shown.map(({ id }) => (
          <li key={id}>
            <VoiceRow answer={answers.get(id)!} onTap={() => setOpen({ voice: id })} />
          </li>
        ))}
      </ul>
      <StruckList struck={struckFrom(day).filter((voice) => isFoundBy(voice, typed))} />
      {open === 'add' && <AddSheet onClose={close} onHardline={(voice) => setOpen({ voice })} />}
      {open === 'sheet' && <CallSheetImport onClose={close} />}
      {open !== null && typeof open === 'object' && <VoiceSheet voice={open.voice} onClose={close} />}
    </Page>
  );
}

interface HeadProps {
  readonly day: Day;
  readonly onOrder: () => void;
  readonly cameFrom: CastTask | null;
}

function CastHead({ day, onOrder, cameFrom }: HeadProps) {
  const order = useFocus<HTMLButtonElement>(cameFrom === 'order');
  const { voices, summary } = answersNow(day);
  const performers = voices.filter(({ voice }) => voice.kind === 'performer');
  const needed = voices.filter(({ need }) => need === 'needed').length;
  const lost = summary.unrecorded.length;
  if (performers.length === 0) return <NobodyYet others={voices.length} />;
  return (
    <div class="cast-head">
      <h1 class="unseen">Cast</h1>
      <p class="soft">
        <b>{countOf(performers.length, 'performer')}</b> ·{' '}
        {needed === 0 ? 'nobody marked needed' : `${needed} needed`}
        {lost > 0 && (
          <>
            {' '}
            · <b class="warn">{lost} not recorded</b>
          </>
        )}
      </p>
      <div class="cast-all">
        <a class="button-plain as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'scenes' })}>
          scenes
        </a>
        {performers.length > 1 && (
          <Button look="plain" ref={order} onClick={onOrder}>
            order
          </Button>
        )}
      </div>
    </div>
  );
}

function NobodyYet({ others }: { others: number }) {
  return (
    <div class="section empty">
      <h1 class="unseen">Cast</h1>
      <p>
        <strong>No performers yet.</strong> Paste the call sheet or open its file, or add one at a time.
        {others === 0 && ' Booms, plants and line feeds are added here too.'}
      </p>
    </div>
  );
}

interface FootProps {
  /** No performers yet, so the call sheet comes first. */
  readonly empty: boolean;
  readonly onOpen: (open: Open) => void;
  readonly onTask: (task: CastTask) => void;
  readonly cameFrom: CastTask | null;
}

function Foot({ empty, onOpen, onTask, cameFrom }: FootProps) {
  const day = useDay().day.value;
  const needed = useFocus<HTMLButtonElement>(cameFrom === 'needed');
  return (
    <div class="cast-foot">
      <Button onClick={() => onOpen('add')}>Add</Button>
      <Button look={empty ? 'solid' : 'outline'} onClick={() => onOpen('sheet')}>
        Call sheet
      </Button>
      {!empty && (
        <>
          <Button ref={needed} onClick={() => onTask('needed')}>
            Who is needed
          </Button>
          <a class="button button-solid as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'plan' })}>
            Next setup
          </a>
        </>
      )}
    </div>
  );
}
