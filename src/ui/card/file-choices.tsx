import { workingHeader } from '../../day/header.ts';
import type { Day } from '../../day/model.ts';
import type { Difference } from '../../reconcile/differences/difference.ts';
import { lengthOfFile, startOfFile } from '../../reconcile/log-and-card/file-fields.ts';
import { recordingName } from '../../reconcile/log-and-card/recorded.ts';
import { formatTimecode } from '../../time/timecode.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { Row } from '../kit/row.tsx';

interface ChoicesProps {
  readonly day: Day;
  readonly question: Extract<Difference, { code: 'match-unsure' }>;
  readonly onSettle: (settlement: number) => void;
}

/** The files that may be a take's, each with what tells it from the others. */
export function FileChoices({ day, question, onSettle }: ChoicesProps) {
  const isOf = (recording: Recording, at: number): boolean => {
    const settlement = question.settlements[at];
    return (
      settlement?.kind === 'describe-takes' && settlement.takes[0]?.fields.file === recordingName(recording)
    );
  };
  return (
    <div class="rows">
      {question.choices.flatMap(({ recording }) => {
        if (!recording) return [];
        const name = recordingName(recording);
        const at = question.settlements.findIndex((_, index) => isOf(recording, index));
        return [
          <Row
            key={name}
            title={name}
            under={fileText(day, recording)}
            word={at < 0 ? '' : 'this one'}
            {...(at >= 0 && { onTap: () => onSettle(at) })}
          />,
        ];
      })}
    </div>
  );
}

/** `'starts 09:12:07:00 · lasts 00:00:56:00 · Mix, Boom, Ines'`. */
export function fileText(day: Day, recording: Recording): string {
  const { timecodeRate } = workingHeader(day, '25');
  const start = startOfFile(recording, timecodeRate);
  const length = lengthOfFile(recording, timecodeRate);
  const names = recording.tracks.map(
    ({ name, channel }) => name ?? (channel === undefined ? '' : `${channel}`),
  );
  return [
    start ? `starts ${formatTimecode(start.frames, start.rate)}` : 'no start',
    length ? `lasts ${formatTimecode(length.frames, length.rate)}` : 'no length',
    names.filter(Boolean).join(', '),
  ]
    .filter(Boolean)
    .join(' · ');
}
