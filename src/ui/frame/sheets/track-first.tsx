import type { TrackAnswer, TrackState } from '../../../day/answers/track-answers.ts';
import type { Subject, SubjectAnswer } from '../../../day/answers/track-subject.ts';
import type { PartId } from '../../../day/model.ts';
import { nameOf } from '../../words/chain.ts';
import { useDay } from '../context.ts';
import { EndGang, GangClash } from './gang-actions.tsx';
import { PackOff } from './give-list.tsx';
import { MoveOut } from './move-out.tsx';
import { Mute } from './mute.tsx';
import { SwapLeads } from './swap-leads.tsx';
import { ThrowSelector } from './throw-selector.tsx';
import { notThereWords } from './track-words.ts';
import './sheets.css';

interface FirstProps {
  readonly answer: TrackAnswer;
  /** The state of the track when the sheet was opened. */
  readonly openedAs: TrackState;
  /** The pack or hardline that the sheet is about; null if it is about the track. */
  readonly subject: { readonly of: Subject; readonly stands: SubjectAnswer } | null;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

interface Arriving {
  readonly name: string;
  readonly input: PartId;
  readonly transmitter: PartId | null;
}

/** What the tap on a track was for: of a clash what settles it; of whoever is on it, mute, gang, selector, pack off. */
export function TrackFirst({ answer, openedAs, subject, before, onDone }: FirstProps) {
  const day = useDay().day.value;
  const place = { before, onDone };
  const arriving: Arriving[] = subject
    ? arrivingAlone(subject)
    : answer.heard.map(({ voice, input, source }) => ({
        name: nameOf(day, voice),
        input,
        transmitter: source.transmitter,
      }));
  const inputs = [...new Set(arriving.map(({ input }) => input))];
  const led = inputs.length > 0 ? inputs : [subject?.stands.path?.input].filter((id) => id != null);
  const isClash = answer.state === 'clash';
  const missing = subject
    ? subject.stands.input
      ? ''
      : 'No input, so nothing to mute.'
    : notThereWords(day, openedAs, answer, before);
  return (
    <div class="first-things">
      {missing && <p class="soft">{missing}</p>}
      {isClash && <GangClash answer={answer} {...place} />}
      {isClash && <MoveOut track={answer.track.id} {...place} />}
      {arriving.map((one) => (
        <Mute key={one.input + one.transmitter} {...one} {...place} />
      ))}
      {!isClash && <EndGang answer={answer} {...place} />}
      {led.map((input) => (
        <ThrowSelector key={input} input={input} {...place} />
      ))}
      {subject && 'hardline' in subject.of && <SwapLeads voice={subject.of.hardline} {...place} />}
      {subject && 'pack' in subject.of && <PackOff transmitter={subject.of.pack} {...place} />}
    </div>
  );
}

/** One alone on its row is muted by the name of what is muted: its input, or its pack. */
function arrivingAlone({ of, stands }: NonNullable<FirstProps['subject']>): Arriving[] {
  if (!stands.input) return [];
  return [{ name: '', input: stands.input, transmitter: 'pack' in of ? of.pack : null }];
}
