import { useState } from 'preact/hooks';
import { changeHead } from '../../../app/commands/day.ts';
import { answersNow } from '../../../day/answers/answers.ts';
import { type Header, TIMECODE_RATES } from '../../../day/model.ts';
import { recordersOf } from '../../../day/recorders/rolling.ts';
import { headerNow, isSetting } from '../../../day/settings/settings.ts';
import { unknownWords } from '../../../day/unknown-words.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { countOf, listOf } from '../../words/chain.ts';
import { copyWords, PROMISED_WORDS, titleOf } from '../../words/day-outline.ts';
import { sampleRateWords } from '../../words/recording.ts';
import { SLATE_STYLES } from '../../words/takes.ts';
import { useApp, useDay, useOutline, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { DayFileButton } from '../sending/day-file-button.tsx';
import { UpdateOffer } from '../update-offer.tsx';
import { RecordersSheet } from './recorders-sheet.tsx';

const TEXTS = [
  ['production', 'Production'],
  ['label', 'Day'],
  ['unit', 'Unit'],
  ['mixer', 'Sound mixer'],
  ['boom', 'Boom'],
  ['utility', 'Utility'],
  ['contact', 'Contact'],
  ['recorder', 'Recorder'],
  ['filePattern', 'File names, e.g. {slate} {take} {take:2} {roll} {scene} {track}'],
] as const satisfies readonly (readonly [keyof Header, string])[];

/** The header of the day, as at the top of the report. Only changed fields are saved. */
export function DaySheet({ onClose }: { onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const day = store.day.value;
  const header = headerNow(day);
  const { roll } = answersNow(day);
  const [edited, setEdited] = useState<Partial<Header>>({});
  const [newRoll, setNewRoll] = useState(roll);
  const [setBefore, setSetBefore] = useState<string | undefined>();
  const [firstTake] = day.takeOrder;
  const [inRecorders, setInRecorders] = useState(false);
  const [rollFrom, setRollFrom] = useState<'first' | 'now'>('first');
  const shown = { ...header, ...edited };
  const set = (fields: Partial<Header>): void => setEdited({ ...edited, ...fields });

  const fields = Object.fromEntries(
    Object.entries(edited).filter(([field, value]) => value !== header[field as keyof Header]),
  );
  const isSet = firstTake !== undefined && Object.keys(fields).some(isSetting);
  const saidRoll = newRoll.trim() !== roll && newRoll.trim() !== '';
  // The takes so far have no roll, and most likely it was in all along.
  const isLateFirst = saidRoll && firstTake !== undefined && day.rolls.length === 0;

  const save = (): void => {
    if (Object.keys(fields).length === 0 && !saidRoll) {
      onClose();
      return;
    }
    const rollBefore = isLateFirst && rollFrom === 'first' ? firstTake : undefined;
    const where = rollBefore ? 'from the first take on' : 'from here on';
    const done = saidRoll ? `Roll ${newRoll.trim()} ${where}` : 'Day details saved';
    const said = {
      fields,
      setBefore: isSet ? setBefore : undefined,
      ...(saidRoll && { roll: { name: newRoll, before: rollBefore } }),
    };
    if (run(changeHead(said), done)) onClose();
  };

  if (inRecorders) return <RecordersSheet onClose={() => setInRecorders(false)} />;
  return (
    <Sheet
      title="About this day"
      under={titleOf(header)}
      onClose={onClose}
      foot={
        <>
          {isSet && (
            <FromWhen before={setBefore} onPlace={setSetBefore} question="New settings, starting when?" />
          )}
          <div class="buttons">
            <Button look="solid" onClick={save}>
              Save
            </Button>
            <a class="button as-button" href="#/">
              All days
            </a>
            <a class="button as-button" href="#/settings">
              Settings
            </a>
            <a class="button as-button" href="#/help">
              Help
            </a>
          </div>
        </>
      }
    >
      <UpdateOffer />
      <Safety />
      <div class="section">
        <div class="field-pair">
          <TextField
            label="Sound roll from here on"
            value={newRoll}
            onInput={setNewRoll}
            capitals="characters"
          />
          <TextField label="Date" type="date" value={shown.date} onInput={(date) => set({ date })} />
        </div>
        {isLateFirst && (
          <Choice
            label={`Roll ${newRoll.trim()} was in from`}
            value={rollFrom}
            options={[
              { value: 'first', name: 'The first take on' },
              { value: 'now', name: 'Here on' },
            ]}
            onChoose={setRollFrom}
          />
        )}
        {TEXTS.map(([field, label]) => (
          <TextField
            key={field}
            label={label}
            value={shown[field]}
            onInput={(value) => set({ [field]: value })}
          />
        ))}
        <Choice
          label="Timecode rate"
          value={shown.timecodeRate}
          options={TIMECODE_RATES.map((value) => ({ value, name: value.replace('DF', ' DF') }))}
          onChoose={(timecodeRate) => set({ timecodeRate })}
        />
        <Choice
          label="Slates"
          value={shown.slateStyle}
          options={SLATE_STYLES}
          onChoose={(slateStyle) => set({ slateStyle })}
        />
        <Choice
          label="Sample rate"
          value={String(shown.sampleRate)}
          options={['44100', '48000', '48048', '96000'].map((value) => ({
            value,
            name: sampleRateWords(Number(value)),
          }))}
          onChoose={(value) => set({ sampleRate: Number(value) })}
        />
        <Choice
          label="Bit depth"
          value={shown.bitDepth}
          options={(['16', '24', '32', '32f'] as const).map((value) => ({
            value,
            name: value.replace('f', ' float'),
          }))}
          onChoose={(bitDepth) => set({ bitDepth })}
        />
        <Choice
          label="Files"
          value={shown.fileLayout}
          options={[
            { value: 'poly', name: 'Poly: one file for all tracks' },
            { value: 'mono', name: 'Mono: one file per track' },
          ]}
          onChoose={(fileLayout) => set({ fileLayout })}
        />
        <Button onClick={() => setInRecorders(true)}>
          {day.rig.recorders.length > 0
            ? `Recorders: ${listOf(recordersOf(day).map(({ name }) => name))}`
            : 'Add a backup recorder'}
        </Button>
      </div>
    </Sheet>
  );
}

/** Where this day is stored, and whether the browser promised to keep it. */
function Safety() {
  const day = useDay().day.value;
  const { unknown } = day;
  const words = unknownWords(day);
  const { safekeeping } = useApp();
  const outline = useOutline();
  return (
    <div class="section safety">
      <p>
        <strong>{copyWords(outline)}</strong>{' '}
        <span class="soft">{PROMISED_WORDS[safekeeping.promised.value]}</span>
      </p>
      {unknown.length > 0 && (
        <p class="soft">
          {countOf(unknown.length, 'entry', 'entries')} of this day {unknown.length === 1 ? 'was' : 'were'}{' '}
          made by a newer version of the app: kept and passed on, but not understood here.
        </p>
      )}
      {words.length > 0 && (
        <p class="soft">
          What a newer version calls {listOf(words)} is kept and passed on, shown as unknown, and nothing is
          worked out from it.
        </p>
      )}
      <DayFileButton day={outline} quiet />
    </div>
  );
}
