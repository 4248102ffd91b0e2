import { useState } from 'preact/hooks';
import { keepMic, mountMic, type OneMic } from '../../../app/commands/mics.ts';
import type { Answers } from '../../../day/answers/answers.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { micOn } from '../../../day/chain/mics.ts';
import { micsProposed } from '../../../day/season/mics-proposed.ts';
import type { KnownMic } from '../../../day/season/season.ts';
import { Button } from '../../kit/button.tsx';
import { Row } from '../../kit/row.tsx';
import { nameOf, partName } from '../../words/chain.ts';
import { asOnWords, dayMonthWords } from '../../words/known-days.ts';
import { micWords } from '../../words/mics.ts';
import { useDay, useRun } from '../context.ts';
import { useKnownMics } from '../use-season.ts';
import { MicSheet } from './open-mic.ts';

interface MicRowsProps {
  readonly answers: Answers;
  readonly answer: VoiceAnswer;
  readonly before: string | undefined;
}

/**
 * The mics on a body, one a pack, or the one on a lead: what they are and where; a tap says more. Where nothing is said
 * yet, what the same cast number had on an earlier day is proposed.
 */
export function MicRows({ answers: { links }, answer, before }: MicRowsProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [open, setOpen] = useState<OneMic | null>(null);
  const { id: voice } = answer.voice;
  const earlier = useKnownMics(answer.voice);
  const wired = answer.paths.filter(({ transmitter, lead }) => transmitter !== null || lead !== null);
  const packs = [...new Set(wired.map(({ transmitter }) => transmitter))];
  const mics = packs.map((transmitter) => ({ transmitter, mic: micOn(links, voice, transmitter) }));
  if (mics.length === 0) return null;
  const nameOfPack = (id: string | null): string => partName(day.rig, id);
  const today = mics.map(({ transmitter, mic }) => ({
    pack: nameOfPack(transmitter),
    isSaid: mic !== undefined,
  }));
  const proposed = micsProposed(today, earlier.mics);
  const asOn = earlier.date && asOnWords(earlier.date);
  const propose = (): void => {
    const commands = mics.flatMap(({ transmitter }, at) => {
      const { mic } = proposed[at] ?? {};
      return mic ? mountMic({ voice, transmitter }, mic, { before }) : [];
    });
    run(commands, `Mic of ${nameOf(day, voice)} ${asOn}`);
  };
  const carried = mics.filter(({ mic }) => mic?.carried);
  const keep = (): void => {
    const commands = carried.map(({ transmitter }) => keepMic({ voice, transmitter }, { before }));
    run(commands, `Mic of ${nameOf(day, voice)} as yesterday`);
  };
  return (
    <section>
      <h3 class="section-title soft">{mics.length > 1 ? 'Mics' : 'Mic'}</h3>
      <ul class="rows">
        {mics.map(({ transmitter, mic }, at) => (
          <li key={transmitter ?? ''}>
            <Row
              title={transmitter ? `Mic on ${partName(day.rig, transmitter)}` : 'Mic on its lead'}
              under={mic ? micWords(mic) : notEnteredWords(proposed[at]?.mic, earlier.date)}
              word={mic?.carried ? 'as yesterday' : undefined}
              onTap={() => setOpen({ voice, transmitter })}
            />
          </li>
        ))}
      </ul>
      {carried.length > 0 && (
        <div class="section buttons">
          <Button onClick={keep}>Same as yesterday</Button>
        </div>
      )}
      {proposed.some(Boolean) && (
        <div class="section buttons">
          <Button onClick={propose}>Same {asOn}</Button>
        </div>
      )}
      {open && <MicSheet mic={open} from={before} onClose={() => setOpen(null)} />}
    </section>
  );
}

/** `'not entered · on 12 March: black omni lavalier, chest'`. */
const notEnteredWords = (proposed: KnownMic['mic'] | undefined, date: string): string =>
  proposed ? `not entered · on ${dayMonthWords(date)}: ${micWords(proposed)}` : 'model and place not entered';
