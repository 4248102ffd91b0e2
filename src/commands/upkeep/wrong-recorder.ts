import type { Day, PartId } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { Result } from '../../shared/result.ts';
import { missing } from '../command.ts';

/** What is said of a recorder must name one that is there. */
export const wrongRecorder = (
  day: Day,
  { recorder }: { readonly recorder?: PartId | null | undefined },
): Result<never> | undefined =>
  typeof recorder === 'string' && !recordersOf(day).some(({ id }) => id === recorder)
    ? missing('recorder', recorder)
    : undefined;
