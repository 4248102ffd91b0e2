import { useEffect, useRef, useState } from 'preact/hooks';
import { type Ear, type EarState, openEar } from '../../../app/ear/ear.ts';
import { raise } from '../../kit/messages.ts';
import { hearingSentence } from '../../words/hearing.ts';

export type Listening =
  | { readonly is: 'off' }
  | { readonly is: 'opening' }
  | { readonly is: 'on'; readonly ear: Ear; readonly state: EarState | undefined };

/** A microphone that closes with the screen that opened it. */
export function useEar(): { readonly now: Listening; readonly listen: () => void } {
  const [now, setNow] = useState<Listening>({ is: 'off' });
  const open = useRef<Ear | undefined>(undefined);
  const gone = useRef(false);
  useEffect(
    () => () => {
      gone.current = true;
      open.current?.close();
    },
    [],
  );
  const ended = (): void => {
    open.current = undefined;
    setNow({ is: 'off' });
  };
  const listen = async (): Promise<void> => {
    setNow({ is: 'opening' });
    const ear = await openEar({
      onState: (state) => {
        const { current } = open;
        if (current) setNow({ is: 'on', ear: current, state });
      },
      onEnd: (problem) => {
        ended();
        raise(hearingSentence(problem));
      },
    });
    if (!ear.ok) {
      ended();
      if (!gone.current) raise(hearingSentence(ear.problem));
      return;
    }
    // The sheet was closed while the browser asked.
    if (gone.current) return ear.value.close();
    open.current = ear.value;
    setNow({ is: 'on', ear: ear.value, state: undefined });
  };
  return { now, listen: () => void listen() };
}
