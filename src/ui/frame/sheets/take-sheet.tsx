import { Fragment } from 'preact';
import { useState } from 'preact/hooks';
import { moveBefore, takeBack } from '../../../app/commands/correct.ts';
import { correctRolling } from '../../../app/commands/recorders.ts';
import { circleTake, describeTake } from '../../../app/commands/takes.ts';
import { answersAtTake } from '../../../day/answers/answers.ts';
import { trackLabels } from '../../../day/files/track-labels.ts';
import { unitsOfTakes } from '../../../day/fold/units-of-takes.ts';
import { type LineItem, UNITS } from '../../../day/model.ts';
import { recordersOf, rollingAtTake } from '../../../day/recorders/rolling.ts';
import { startOfTake } from '../../../day/settings/settings.ts';
import { takeText } from '../../../day/slate.ts';
import { isOpen } from '../../../day/takes.ts';
import { lateOnLine } from '../../../day/wrap/since-closing.ts';
import { formatLength } from '../../../time/length.ts';
import { formatTimecode } from '../../../time/timecode.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/field.tsx';
import { Row } from '../../kit/row.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { Toggles } from '../../kit/toggles.tsx';
import { shortened } from '../../words/actions.ts';
import { listOf, onTrackWords, TRACK_WORD } from '../../words/chain.ts';
import { lateWords } from '../../words/closing.ts';
import { whose } from '../../words/phones.ts';
import { recorderName, rollingRigs, trackWithRecorder } from '../../words/recorder-names.ts';
import { statusWords, UNIT_WORD } from '../../words/takes.ts';
import { useDatabase, useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { useCut } from '../use-cut.ts';
import { NoteSheet } from './note-sheet.tsx';
import { TakeForm } from './take-form.tsx';
import { TakenBackSheet } from './taken-back-sheet.tsx';

/** One take: what was recorded on each track, and everything that can be corrected. */
export function TakeSheet({ item, onClose }: { item: LineItem; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const cut = useCut();
  const own = useDatabase();
  const [doing, setDoing] = useState<'form' | 'note' | 'move' | null>(null);
  const take = day.takes.get(item.fact.id);
  if (!take) return <TakenBackSheet item={item} onClose={onClose} />;
  const name = takeText(take);
  const by = whose(day, take.id, own);
  const late = lateOnLine(day).get(take.id);
  if (doing === 'form') return <TakeForm take={take} onClose={onClose} />;
  if (doing === 'note') return <NoteSheet take={take.id} onClose={() => setDoing(null)} />;
  const labels = trackLabels(day.rig);
  const rigs = rollingRigs(answersAtTake(day, take.id));
  const recorders = recordersOf(day);
  const on = rollingAtTake(day, take.id).map(({ id }) => id);
  const recordOn = (ids: string[]): void => {
    const names = recorders.filter(({ id }) => ids.includes(id)).map((one) => one.name);
    run(correctRolling(take.id, ids), `${name} is on ${listOf(names)}`);
  };
  const units = unitsOfTakes(day).get(take.id) ?? [];
  const shown = startOfTake(day, take);
  const start = shown ? formatTimecode(shown.frames, shown.rate) : 'no start';
  const length = take.length
    ? formatLength(take.length.frames, take.length.rate)
    : isOpen(take)
      ? 'rolling'
      : 'no length';
  const move = (before: string | undefined): void => {
    const done = before ? `${name} moved on the line` : `${name} back where it was logged`;
    if (run(moveBefore(take.id, before ?? null), done)) onClose();
  };
  return (
    <Sheet
      title={name}
      under={[
        start,
        length,
        ...statusWords(take, units),
        ...(by ? [by] : []),
        ...(late ? [lateWords(late)] : []),
      ].join(' · ')}
      onClose={onClose}
      foot={
        <>
          {doing === 'move' && <FromWhen before={undefined} onPlace={move} question="Move to where?" />}
          <div class="buttons">
            {isOpen(take) && (
              <Button look="solid" onClick={() => cut(take)}>
                Cut
              </Button>
            )}
            <Button
              pressed={take.circled}
              onClick={() =>
                run(
                  circleTake(take.id, !take.circled),
                  take.circled ? `${name} not circled` : `${name} circled`,
                )
              }
            >
              Circle
            </Button>
            <Button onClick={() => setDoing('note')}>Note</Button>
            <Button onClick={() => setDoing('form')}>Edit</Button>
            <Button expanded={doing === 'move'} onClick={() => setDoing('move')}>
              Move
            </Button>
            <Button onClick={() => run(takeBack([take.id]), `${name} removed`) && onClose()}>Remove</Button>
          </div>
        </>
      }
    >
      {recorders.length > 1 && take.kind !== 'mos' && (
        <div class="section">
          <Toggles named label="Recorded on" options={recorders} on={on} onChange={recordOn} />
        </div>
      )}
      {take.notes.length > 0 && (
        <ul class="rows">
          {take.notes.map((note) => (
            <li key={note.id} class="row-action">
              <Row title={note.text} under={note.track ? trackWithRecorder(day, note.track) : 'whole take'} />
              <Button
                look="plain"
                label={`Remove the note ${note.text}`}
                onClick={() => run(takeBack([note.id]), `Note removed: ${shortened(note.text)}`)}
              >
                Remove
              </Button>
            </li>
          ))}
        </ul>
      )}
      {rigs.map(({ recorder, tracks }) => (
        <Fragment key={recorder}>
          {rigs.length > 1 && <h3 class="section-title">{recorderName(day, recorder)}</h3>}
          <ul class="rows">
            {tracks
              .filter(({ state }) => state !== 'empty')
              .map(({ track, state, name: on }) => (
                <li key={track.id}>
                  <Row
                    number={labels.get(track.id)}
                    mark={state === 'empty' ? 'free' : state}
                    title={onTrackWords({ state, name: on }, labels.get(track.id) ?? '')}
                    word={TRACK_WORD[state]}
                  />
                </li>
              ))}
          </ul>
        </Fragment>
      ))}
      <div class="section">
        <Choice
          label="Unit"
          value={units.length > 1 ? '' : (take.unit ?? 'main')}
          options={UNITS.map((value) => ({ value, name: UNIT_WORD[value] }))}
          onChoose={(unit) => run(describeTake(take.id, { unit }), `${name} of the ${UNIT_WORD[unit]} unit`)}
        />
      </div>
    </Sheet>
  );
}
