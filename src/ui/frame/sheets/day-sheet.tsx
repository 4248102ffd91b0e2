import { useState } from 'preact/hooks';
import { changeHead } from '../../../app/commands/day.ts';
import type { Header } from '../../../day/model.ts';
import { recordersOf } from '../../../day/recorders/rolling.ts';
import { headerNow, isSetting } from '../../../day/settings/settings.ts';
import { unknownWords } from '../../../day/unknown-words.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { countOf, listOf } from '../../words/chain.ts';
import { copyWords, PROMISED_WORDS, titleOf } from '../../words/day-outline.ts';
import { SLATE_STYLES } from '../../words/takes.ts';
import { useApp, useDay, useOutline, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { hrefOf } from '../route.ts';
import { DayFileButton } from '../sending/day-file-button.tsx';
import { UpdateOffer } from '../update-offer.tsx';
import { CrewFields } from './crew-fields.tsx';
import { RecordersSheet } from './recorders-sheet.tsx';
import { RollField, RollFrom, useRoll } from './roll-field.tsx';
import { FilePattern, SoundSettings, TimecodeRate } from './setting-fields.tsx';

const TEXTS = [
  ['production', 'Production'],
  ['label', 'Day'],
  ['unit', 'Unit'],
  ['mixer', 'Sound mixer'],
  ['boom', 'Boom'],
  ['utility', 'Utility'],
  ['contact', 'Contact'],
] as const satisfies readonly (readonly [keyof Header, string])[];

/** The header of the day, as at the top of the report. Only changed fields are saved. */
export function DaySheet({ onClose }: { onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const day = store.day.value;
  const header = headerNow(day);
  const [edited, setEdited] = useState<Partial<Header>>({});
  const roll = useRoll();
  const [setBefore, setSetBefore] = useState<string | undefined>();
  const [firstTake] = day.takeOrder;
  // What several recorders are set to, each says for itself.
  const isOne = day.rig.recorders.length === 0;
  const [inRecorders, setInRecorders] = useState(false);
  const shown = { ...header, ...edited };
  const set = (fields: Partial<Header>): void => setEdited({ ...edited, ...fields });

  const fields = Object.fromEntries(
    Object.entries(edited).filter(([field, value]) => value !== header[field as keyof Header]),
  );
  const isSet = firstTake !== undefined && Object.keys(fields).some(isSetting);

  const save = (): void => {
    if (Object.keys(fields).length === 0 && !roll.isSaid) {
      onClose();
      return;
    }
    const where = roll.before ? 'from the first take on' : 'from here on';
    const done = roll.isSaid ? `Roll ${roll.name} ${where}` : 'Day details saved';
    const said = {
      fields,
      setBefore: isSet ? setBefore : undefined,
      ...(roll.isSaid && { roll: { name: roll.name, before: roll.before } }),
    };
    if (run(changeHead(said), done)) onClose();
  };

  const date = <TextField label="Date" type="date" value={shown.date} onInput={(on) => set({ date: on })} />;
  const settings = { shown, onSet: set };
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
        {isOne ? (
          <div class="field-pair">
            <RollField {...roll} />
            {date}
          </div>
        ) : (
          date
        )}
        {isOne && <RollFrom {...roll} />}
        {TEXTS.map(([field, label]) => (
          <TextField
            key={field}
            label={label}
            value={shown[field]}
            onInput={(value) => set({ [field]: value })}
          />
        ))}
        {isOne && (
          <>
            <TextField label="Recorder" value={shown.recorder} onInput={(recorder) => set({ recorder })} />
            <FilePattern {...settings} />
            <TimecodeRate {...settings} />
          </>
        )}
        <Choice
          label="Slates"
          value={shown.slateStyle}
          options={SLATE_STYLES}
          onChoose={(slateStyle) => set({ slateStyle })}
        />
        {isOne && <SoundSettings {...settings} />}
        <a class="button as-button" href={hrefOf({ at: 'day', day: day.id, tab: 'phones' })}>
          Phones
        </a>
        <Button onClick={() => setInRecorders(true)}>
          {isOne ? 'Add a recorder' : `Recorders: ${listOf(recordersOf(day).map(({ name }) => name))}`}
        </Button>
      </div>
      <CrewFields {...settings} />
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
