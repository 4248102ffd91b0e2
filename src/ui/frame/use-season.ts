import { useEffect, useState } from 'preact/hooks';
import { type KnownMic, knownBefore, type Season, seasonBefore } from '../../app/season.ts';
import type { Voice } from '../../day/model.ts';
import { useApp, useDay } from './context.ts';

const NOTHING: Season = [];

/** What earlier days of the open day's production know; nothing until they are read. */
export function useSeason(): Season {
  const { journal } = useApp().parts;
  const day = useDay().day.value;
  const [season, setSeason] = useState(NOTHING);
  const { production, date, sample } = day.header;
  useEffect(() => {
    let isHere = true;
    // A day that cannot be read is one that nothing is known of.
    seasonBefore(journal, day).then(
      (known) => isHere && setSeason(known),
      () => {},
    );
    return () => {
      isHere = false;
    };
  }, [journal, day.id, production, date, sample]);
  return season;
}

/** The mics that a voice's cast number had on the latest day before that says, and the date of that day. */
export function useKnownMics(voice: Voice | undefined): {
  readonly mics: readonly KnownMic[];
  readonly date: string;
} {
  const season = useSeason();
  const known = voice?.kind === 'performer' ? knownBefore(season, voice) : undefined;
  return { mics: known?.mics ?? [], date: known?.micsDate ?? '' };
}
