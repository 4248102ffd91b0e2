import type { Day } from '../../day/model.ts';
import { recorderName } from '../words/recorder-names.ts';
import { MoveList } from './plan-moves.tsx';
import { RecorderPlan } from './recorder-plan.tsx';
import type { Backup } from './use-backups.ts';

interface BackupPlansProps {
  readonly day: Day;
  readonly backups: readonly Backup[];
  /** How many moves the main recorder has, which come first. */
  readonly after: number;
}

/** What the recorders that roll along need besides, each with its own moves. */
export function BackupPlans({ day, backups, after }: BackupPlansProps) {
  return backups.map(({ recorder, plan, isLooking, isStale }, at) => {
    const before = backups.slice(0, at).reduce((sum, one) => sum + (one.plan?.moves.length ?? 0), after);
    return (
      <RecorderPlan
        key={recorder}
        recorder={recorder}
        isMain={false}
        plan={plan}
        isLooking={isLooking}
        isStale={isStale}
      >
        <MoveList
          day={day}
          label={`Moves for ${recorderName(day, recorder)}, in their order`}
          after={before}
          moves={plan?.moves ?? []}
          isStale={isStale}
        />
      </RecorderPlan>
    );
  });
}
