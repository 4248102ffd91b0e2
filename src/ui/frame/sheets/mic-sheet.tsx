import { useState } from 'preact/hooks';
import { keepMic, micAsOn, mountMic, type OneMic } from '../../../app/commands/mics.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { type Mic, micOn, micsKnownOf } from '../../../day/chain/mics.ts';
import { type Day, MIC_FIELDS, type MicField } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { nameOf, partName } from '../../words/chain.ts';
import { dayMonthWords } from '../../words/known-days.ts';
import { MIC_FIELD_WORD, micOptions, micWords } from '../../words/mics.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { useKnownMics } from '../use-season.ts';

interface MicSheetProps {
  readonly mic: OneMic;
  readonly from: string | undefined;
  readonly onClose: () => void;
}

/** What is on a body and where: usual answers in one tap each, in the order they are asked for. */
export function MicSheet({ mic, from, onClose }: MicSheetProps) {
  const day = useDay().day.value;
  const [before, setBefore] = useState(from);
  const [typing, setTyping] = useState(false);
  const { links } = answersBefore(day, before);
  const known = micOn(links, mic.voice, mic.transmitter);
  const on = mic.transmitter ? `mic on ${partName(day.rig, mic.transmitter)}` : 'mic on its lead';
  return (
    <Sheet
      title={`${nameOf(day, mic.voice)}, ${on}`}
      under={known ? `${micWords(known)}${known.carried ? ' · as yesterday' : ''}` : 'nothing entered yet'}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <Earlier day={day} mic={mic} known={known} before={before} />
      <div class="section">
        {MIC_FIELDS.map((field) => (
          <FieldTaps key={field} field={field} mic={mic} known={known} before={before} />
        ))}
      </div>
      <div class="section">
        <Button expanded={typing} onClick={() => setTyping(!typing)}>
          Type something else
        </Button>
        {typing && <Typed mic={mic} known={known} before={before} onDone={() => setTyping(false)} />}
      </div>
    </Sheet>
  );
}

interface PartProps {
  readonly mic: OneMic;
  readonly known: Mic | undefined;
  readonly before: string | undefined;
}

/** As yesterday, as on another pack that the voice had, or as its cast number had it before: one tap. */
function Earlier({ day, mic, known, before }: PartProps & { readonly day: Day }) {
  const run = useRun();
  const { links } = answersBefore(day, before);
  const others = [...micsKnownOf(links, mic.voice)].filter(([pack]) => pack !== mic.transmitter);
  const name = nameOf(day, mic.voice);
  const earlier = useKnownMics(day.voices.get(mic.voice));
  if (!known?.carried && (known || others.length + earlier.mics.length === 0)) return null;
  return (
    <div class="first-things">
      {known?.carried && (
        <Button class="wide" onClick={() => run(keepMic(mic, { before }), `Mic of ${name} as yesterday`)}>
          Same as yesterday
        </Button>
      )}
      {!known &&
        others.map(([pack, other]) => (
          <Button
            key={pack ?? ''}
            class="wide"
            onClick={() => run(micAsOn(mic, pack, { before }), `Mic of ${name}: ${micWords(other)}`)}
          >
            {`As on ${pack ? partName(day.rig, pack) : 'its lead'}${other.carried ? ' yesterday' : ''}: ${micWords(other)}`}
          </Button>
        ))}
      {!known &&
        earlier.mics.map(({ mic: usual }) => (
          <Button
            key={micWords(usual)}
            class="wide"
            onClick={() => run(mountMic(mic, usual, { before }), `Mic of ${name}: ${micWords(usual)}`)}
          >
            {`As on ${dayMonthWords(earlier.date)}: ${micWords(usual)}`}
          </Button>
        ))}
    </div>
  );
}

function FieldTaps({ field, mic, known, before }: PartProps & { readonly field: MicField }) {
  const day = useDay().day.value;
  const run = useRun();
  const said = known?.[field] ?? '';
  const say = (text: string): void => {
    const next = text === said ? null : text;
    const what = next ?? `${MIC_FIELD_WORD[field].toLowerCase()} not entered`;
    const done = `Mic of ${nameOf(day, mic.voice)}: ${what}`;
    run(mountMic(mic, { [field]: next }, { before }), done);
  };
  return (
    <fieldset class="choice">
      <legend class="soft">{MIC_FIELD_WORD[field]}</legend>
      <div class="buttons">
        {micOptions(day, field, said).map((text) => (
          <Button key={text} pressed={text === said} onClick={() => say(text)}>
            {text}
          </Button>
        ))}
      </div>
    </fieldset>
  );
}

function Typed({ mic, known, before, onDone }: PartProps & { readonly onDone: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [texts, setTexts] = useState<Partial<Record<MicField, string>>>({});
  const save = (event: Event): void => {
    event.preventDefault();
    if (run(mountMic(mic, texts, { before }), `Mic of ${nameOf(day, mic.voice)} changed`)) onDone();
  };
  return (
    <form onSubmit={save}>
      {MIC_FIELDS.map((field) => (
        <TextField
          key={field}
          label={MIC_FIELD_WORD[field]}
          value={texts[field] ?? known?.[field] ?? ''}
          onInput={(text) => setTexts({ ...texts, [field]: text })}
        />
      ))}
      <Button look="solid" type="submit" disabled={Object.keys(texts).length === 0}>
        Save
      </Button>
    </form>
  );
}
