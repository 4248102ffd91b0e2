import type { Listener, SharedReceiver } from '../../day/answers/listeners.ts';
import { listOf } from './chain.ts';

/** `IFB 1 · channel 3 · hears Mix`; what was not said is left out. */
export const listenerWords = ({ receiver, channel, hears }: Listener): string =>
  [receiver, channel && `channel ${channel}`, hears && `hears ${hears}`].filter(Boolean).join(' · ');

/** One listener as a line of the wiring sheet. */
export const listenerLine = (listener: Listener): string => {
  const words = listenerWords(listener);
  return words ? `${listener.name}: ${words}` : listener.name;
};

/** `Director and Client both have IFB 1.` */
export const sharedWords = ({ receiver, listeners }: SharedReceiver): string =>
  `${listOf(listeners.map(({ name }) => name))} ${listeners.length > 2 ? 'all' : 'both'} have ${receiver}.`;
