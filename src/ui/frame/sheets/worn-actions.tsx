import { giveTransmitter, setMute } from '../../../app/commands/chain.ts';
import type { Answers } from '../../../day/answers/answers.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { mutedAt } from '../../../day/chain/links.ts';
import type { PartId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { partName } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';

interface WornProps {
  readonly answers: Answers;
  readonly answer: VoiceAnswer;
  readonly before: string | undefined;
}

/** Takes off what a voice wears, mutes it at the pack, and unmutes whatever is muted on its path. */
export function WornActions({ answers: { links }, answer, before }: WornProps) {
  const { rig } = useDay().day.value;
  const run = useRun();
  const worn = unique(answer.paths.map(({ transmitter }) => transmitter));
  const inputs = unique(answer.paths.map(({ input }) => input));
  const isMuted = (part: PartId): boolean => mutedAt(links, part)?.value ?? false;
  const mute = (part: PartId, muted: boolean): void => {
    const done = `${partName(rig, part)} ${muted ? 'muted' : 'unmuted'}`;
    run(setMute(part, muted, { before }), done);
  };
  const off = (pack: PartId): void => {
    run(giveTransmitter(pack, null, { before }), `${partName(rig, pack)} off`);
  };
  const switches = [...worn, ...inputs.filter((input) => worn.length === 0 || isMuted(input))];
  return (
    <>
      {switches.map((part) => (
        <Button key={part} onClick={() => mute(part, !isMuted(part))}>
          {isMuted(part) ? 'Unmute' : 'Mute'} {partName(rig, part)}
        </Button>
      ))}
      {worn.map((pack) => (
        <Button key={pack} onClick={() => off(pack)}>
          Take {partName(rig, pack)} off
        </Button>
      ))}
    </>
  );
}

const unique = (ids: readonly (PartId | null)[]): PartId[] => [...new Set(ids.filter((id) => id !== null))];
