import { useState } from 'preact/hooks';
import { markNeed } from '../../../app/commands/chain.ts';
import { type Answers, answersBefore } from '../../../day/answers/answers.ts';
import { heardWith } from '../../../day/answers/heard-with.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { isHardline } from '../../../day/cast-in-order.ts';
import { type Day, NEEDS, type VoiceId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/field.tsx';
import { Row } from '../../kit/row.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { breakWords, listOf, nameOf, pathWords, VOICE_MARK } from '../../words/chain.ts';
import { NEED_WORD } from '../../words/needs.ts';
import { behindWords, stateWords } from '../../words/voice.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { Because } from './because.tsx';
import { PackList } from './give-list.tsx';
import { InputList } from './input-list.tsx';
import { VoiceForm } from './voice-form.tsx';
import { WornActions } from './worn-actions.tsx';

interface VoiceProps {
  readonly voice: VoiceId;
  /** The take that changes go before at first; default now. */
  readonly from?: string | undefined;
  readonly onClose: () => void;
}

/** One voice: how it is recorded or where its chain breaks, its pack, and whether it is needed. */
export function VoiceSheet({ voice, from, onClose }: VoiceProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(from);
  const [editing, setEditing] = useState(false);
  const answers = answersBefore(day, before);
  const answer = answers.voices.find((one) => one.voice.id === voice);
  if (!answer) return null;
  const name = nameOf(day, voice);
  const hardline = isHardline(answer.voice.kind);
  return (
    <Sheet
      title={name}
      under={underName(day, answers, answer)}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <Paths answer={answer} />
      <div class="section">
        <Choice
          label={before ? 'From there on' : 'From here on'}
          value={answer.need ?? ''}
          options={NEEDS.map((value) => ({ value, name: NEED_WORD[value] }))}
          onChoose={(need) => run(markNeed([voice], need, { before }), `${name} ${NEED_WORD[need]}`)}
        />
        <div class="buttons">
          <WornActions answers={answers} answer={answer} before={before} />
          <Button expanded={editing} onClick={() => setEditing(!editing)}>
            Name
          </Button>
        </div>
      </div>
      {editing && <VoiceForm voice={voice} onDone={() => setEditing(false)} onStruck={onClose} />}
      {hardline && <InputList answers={answers} answer={answer} before={before} onDone={onClose} />}
      <PackList
        title={hardline ? 'Or give it a pack' : `Give ${name} a pack`}
        voice={voice}
        before={before}
        onDone={onClose}
      />
      <Because because={answer.paths.flatMap(({ because }) => because)} />
    </Sheet>
  );
}

/** Who it is, how it is recorded, and who shares the track. */
function underName(day: Day, answers: Answers, answer: VoiceAnswer): string {
  const { voice, state } = answer;
  const others = heardWith(answers, voice.id).map((id) => nameOf(day, id));
  const shared = state === 'gang' || state === 'clash' ? ` with ${listOf(others)}` : '';
  const facts = [voice.number && `cast number ${voice.number}`, behindWords(voice)];
  return [...facts, `${stateWords(day.rig, answer)}${shared}`].filter(Boolean).join(' · ');
}

/** The paths from the body to the tracks, each as far as it goes. */
function Paths({ answer }: { answer: VoiceAnswer }) {
  const { rig } = useDay().day.value;
  const begun = answer.paths.filter(({ transmitter, lead }) => transmitter || lead);
  if (begun.length === 0) return null;
  return (
    <ul class="rows">
      {begun.map((path) => (
        <li key={`${path.transmitter}${path.channel}${path.lead}`}>
          <Row
            mark={path.broken ? 'broken' : VOICE_MARK[answer.state]}
            title={pathWords(rig, path)}
            under={breakWords(rig, path)}
          />
        </li>
      ))}
    </ul>
  );
}
