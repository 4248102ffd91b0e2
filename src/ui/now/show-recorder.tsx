import type { Answers } from '../../day/answers/answers.ts';
import type { RecorderAnswers } from '../../day/answers/recorder-answers.ts';
import { useDay } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { recorderName, rollingRigs } from '../words/recorder-names.ts';
import './show-recorder.css';

interface ShowProps {
  readonly answers: Answers;
  readonly shown: RecorderAnswers;
  readonly onTap: () => void;
}

/** The recorder whose rows are shown, where several roll; a tap shows the next one's. */
export function ShowRecorder({ answers, shown, onTap }: ShowProps) {
  const day = useDay().day.value;
  const rigs = rollingRigs(answers);
  const next = rigs[(rigs.indexOf(shown) + 1) % rigs.length]!;
  return (
    <Button look="bare" class="summary-recorder" onClick={onTap}>
      <strong>{recorderName(day, shown.recorder)}</strong>
      <span class="soft">show {recorderName(day, next.recorder)}</span>
    </Button>
  );
}
