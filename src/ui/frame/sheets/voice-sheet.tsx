import { useState } from 'preact/hooks';
import { markNeed } from '../../../app/commands/chain.ts';
import { type Answers, answersBefore } from '../../../day/answers/answers.ts';
import { heardWith } from '../../../day/answers/heard-with.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { isHardline } from '../../../day/cast-in-order.ts';
import { type Day, NEEDS, type VoiceId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { listOf, nameOf } from '../../words/chain.ts';
import { NEED_WORD } from '../../words/needs.ts';
import { notOnWords, rollingRigs } from '../../words/recorder-names.ts';
import { behindWords, callTimesWords, stateWords } from '../../words/voice.ts';
import { useDay, useRun } from '../context.ts';
import { FromWhen } from '../from-when.tsx';
import { Because } from './because.tsx';
import { ChainPictures } from './chain-picture.tsx';
import { PackList } from './give-list.tsx';
import { InputList } from './input-list.tsx';
import { MicRows } from './mic-rows.tsx';
import { SwapLeads } from './swap-leads.tsx';
import { placeWords } from './track-words.ts';
import { VoiceForm } from './voice-form.tsx';
import { WornActions } from './worn-actions.tsx';
import './sheets.css';

interface VoiceProps {
  readonly voice: VoiceId;
  /** The take that changes go before at first; default now. */
  readonly from?: string | undefined;
  readonly onClose: () => void;
}

/** One voice: its chain, drawn, with the break in it; its pack, and whether it is needed. */
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
      under={[placeWords(day, before), underName(day, answers, answer)].filter(Boolean).join(' · ')}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <ChainPictures answers={answers} answer={answer} />
      <div class="first-things">
        <WornActions answers={answers} answer={answer} before={before} />
        {hardline && <SwapLeads voice={voice} before={before} onDone={onClose} />}
        <Button expanded={editing} onClick={() => setEditing(!editing)}>
          Edit
        </Button>
        <Choice
          label={before ? 'From there on' : 'From here on'}
          value={answer.need ?? ''}
          options={NEEDS.map((value) => ({ value, name: NEED_WORD[value] }))}
          onChoose={(need) => run(markNeed([voice], need, { before }), `${name} ${NEED_WORD[need]}`)}
        />
      </div>
      <MicRows answers={answers} answer={answer} before={before} />
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
  const facts = [voice.number && `cast number ${voice.number}`, behindWords(voice), callTimesWords(voice)];
  const not = notOnWords(day, rollingRigs(answers), [voice.id]);
  return [...facts, `${stateWords(day, answer)}${shared}`, not].filter(Boolean).join(' · ');
}
