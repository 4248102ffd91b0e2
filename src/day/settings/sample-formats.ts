import { EMPTY_HEADER } from '../header.ts';
import type { Day, PartId, Take } from '../model.ts';
import { takenAtMs } from '../taken-at.ts';
import { type Settings, settingsSaidAt } from './settings.ts';

export type SampleFormat = Pick<Settings, 'sampleRate' | 'bitDepth'>;

/**
 * The sample format of each take: as the line says, or else what the header said when it rolled. Files already
 * on a card keep the format of their time, so a header changed at noon does not recompute the morning. Of the
 * main recorder if none is named.
 */
export function sampleFormats(day: Day, recorder?: PartId): (take: Take) => SampleFormat {
  const headerAt = headerFormats(day);
  return (take) => {
    const header = headerAt(takenAtMs(day, take));
    const said = settingsSaidAt(day, take.id, recorder);
    return {
      sampleRate: said.sampleRate ?? header.sampleRate,
      bitDepth: said.bitDepth ?? header.bitDepth,
    };
  };
}

function headerFormats(day: Day): (atMs: number) => SampleFormat {
  const said = day.facts.flatMap((fact) =>
    fact.kind === 'day-described' && !day.takenBack.has(fact.id) ? [{ at: fact.at, ...fact.fields }] : [],
  );
  return (atMs) => {
    const by = said.filter(({ at }) => at <= atMs);
    return {
      sampleRate: by.findLast(({ sampleRate }) => sampleRate)?.sampleRate ?? EMPTY_HEADER.sampleRate,
      bitDepth: by.findLast(({ bitDepth }) => bitDepth)?.bitDepth ?? EMPTY_HEADER.bitDepth,
    };
  };
}
