import { answersNow } from '../../day/answers/answers.ts';
import { wornBy } from '../../day/chain/links.ts';
import type { Day } from '../../day/model.ts';
import { nameOf } from '../words/chain.ts';
import { deviceName } from '../words/prep-facts.ts';

/** A device with whoever wears it now: `A3 on Ines`. */
export function wornWords(day: Day, device: string): string {
  const voice = wornBy(answersNow(day).links, device)?.value;
  const name = deviceName(day, device);
  return voice ? `${name} on ${nameOf(day, voice)}` : name;
}
