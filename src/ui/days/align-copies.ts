import { alignCopies as aligning, type Phone } from '../../app/import/align-copies.ts';
import { route } from '../frame/route.ts';
import { raise } from '../kit/messages.ts';
import { backAfterLossWords, comingBackWords, onlyCopiedWords } from './restored-words.ts';

/**
 * Reconciles the copies and the database, and says what came back: the user may have missed it on the screen
 * and tapped again.
 */
export async function alignCopies(phone: Phone, most = Number.POSITIVE_INFINITY): Promise<void> {
  for await (const { days, isAfterLoss, isAll } of aligning(phone, dayAtAddress, most)) {
    if (!isAfterLoss) {
      if (!isAll) raise(onlyCopiedWords(days));
    } else if (isAll) raise(backAfterLossWords(days));
    // Only once: whoever dismissed it need not see it again for every day.
    else if (days.length === 1) raise(comingBackWords());
  }
}

function dayAtAddress(): string | undefined {
  const where = route.peek();
  return where.at === 'day' ? where.day : undefined;
}
