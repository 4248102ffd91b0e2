import type { Answers } from '../../day/answers/answers.ts';
import type { WorkingHeader } from '../../day/header.ts';
import type { Take } from '../../day/model.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';

/** A take and its recording, with everything that is compared. */
export interface CheckedPair {
  readonly take: Take;
  readonly recording: Recording;
  readonly logged: Logged;
  readonly recorded: Recorded;
  readonly answers: Answers;
  /** What held for the take, to compute with. */
  readonly header: WorkingHeader;
}
