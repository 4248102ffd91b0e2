import { setMute } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { mutePointOf } from '../../../day/answers/mute-point.ts';
import type { PartId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { partName } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';

interface MuteProps {
  /** Who is muted, where several are; otherwise the input or pack is named. */
  readonly name?: string;
  readonly input: PartId;
  readonly transmitter: PartId | null;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Mutes or unmutes who comes in by an input, and nobody else. */
export function Mute({ name, input, transmitter, before, onDone }: MuteProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { part, muted } = mutePointOf(answersBefore(day, before), input, transmitter);
  const what = name || partName(day.rig, part);
  const toggle = (): void => {
    const done = `${what} ${muted ? 'unmuted' : 'muted'}`;
    if (run(setMute(part, !muted, { before }), done)) onDone();
  };
  return (
    <Button onClick={toggle}>
      {muted ? 'Unmute' : 'Mute'} {what}
    </Button>
  );
}
