import { isMissed, type VoiceAnswer } from '../../day/answers/voice-answers.ts';
import { wordIn } from '../../shared/open-word.ts';
import { useDay } from '../frame/context.ts';
import { Row } from '../kit/row.tsx';
import { nameOf, VOICE_MARK } from '../words/chain.ts';
import { NEED_WORD } from '../words/needs.ts';
import { behindWords, callTimesWords, stateWords } from '../words/voice.ts';
import { chainWords } from './words.ts';

/** One of the cast: the mark and word for how they are recorded, and the chain under the name. */
export function VoiceRow({ answer, onTap }: { answer: VoiceAnswer; onTap: () => void }) {
  const day = useDay().day.value;
  const { voice, state, need } = answer;
  const words = stateWords(day, answer);
  const isBad = state === 'clash' || isMissed(answer);
  return (
    <Row
      number={voice.number}
      mark={VOICE_MARK[state]}
      title={<VoiceName answer={answer} />}
      under={[chainWords(day.rig, answer), state === 'off' && callTimesWords(voice)]
        .filter(Boolean)
        .join(' · ')}
      word={
        <>
          {isBad ? <strong>{words}</strong> : <span class="cast-state">{words}</span>}
          {need && wordIn(NEED_WORD, need)}
        </>
      }
      onTap={onTap}
    />
  );
}

/** The part, followed by who plays it. */
export function VoiceName({ answer: { voice } }: { answer: VoiceAnswer }) {
  const day = useDay().day.value;
  const behind = behindWords(voice);
  return (
    <>
      {nameOf(day, voice.id)}
      {behind !== '' && <span class="cast-behind"> {behind}</span>}
    </>
  );
}
