import { newAgreementKey } from '../../exchange/sealed/agreement.ts';
import type { SealingParts } from '../../exchange/sealed/seal.ts';
import { newWriterKey } from '../../exchange/sealed/signing.ts';
import type { DayStore } from '../day-store.ts';
import type { KeyRing } from '../key-ring.ts';
import type { Shelf } from '../shelf.ts';
import { membersOf } from './members.ts';

/**
 * Makes this phone another key where a copy of it writes under the one that it had, from the batch `from` on: what it
 * sealed since then is taken by nobody, so it is sealed anew once the owner lets the new key in, and the log is read
 * from its start for what the copy said. False for the owner itself, whom nobody else could let in. `stop` ends what
 * writes on the shelf.
 */
export async function renewKey(
  parts: SealingParts,
  ring: KeyRing,
  shelf: Shelf,
  store: DayStore,
  from: number,
  stop: () => Promise<void>,
): Promise<boolean> {
  const day = store.day.peek().id;
  const held = await ring.read(day);
  if (!held?.key) return false;
  const { writer } = held.key;
  if ((await membersOf(parts, held, store)).owner.writer === writer) return false;
  await stop();
  const { batches } = await shelf.read(day);
  const lost = batches.filter((batch) => batch.writer === writer && batch.number >= from);
  const { word: _, ...rest } = held;
  const [key, agreement] = await Promise.all([newWriterKey(parts.crypto), newAgreementKey(parts.crypto)]);
  await ring.keep(day, { ...rest, key, agreement, isRenewed: true });
  await shelf.drop(day, lost);
  await shelf.keep(day, [], {});
  return true;
}
