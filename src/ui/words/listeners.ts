import type { Listener } from '../../day/answers/listeners.ts';

/** `IFB 1 · channel 3 · hears Mix`; what was not said is left out. */
export const listenerWords = ({ receiver, channel, hears }: Listener): string =>
  [receiver, channel && `channel ${channel}`, hears && `hears ${hears}`].filter(Boolean).join(' · ');

/** One listener as a line of the wiring sheet. */
export const listenerLine = (listener: Listener): string => {
  const words = listenerWords(listener);
  return words ? `${listener.name}: ${words}` : listener.name;
};
