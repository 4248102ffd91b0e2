import { trackLabels } from '../../day/files/track-labels.ts';
import type { Day, PartId } from '../../day/model.ts';
import { tracksOf } from '../../day/recorders/recorder-parts.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { fileTracksOf } from './file-tracks.ts';
import { stemOf } from './plain-key.ts';

/** How a recorder names the mono files of one recording. */
export interface FileMarks {
  /** The name before the marks. */
  readonly stem: string;
  /** The marks as in a name pattern: `'_tr{track}'`. */
  readonly pattern: string;
}

const LEAD = /(?:[\s._-]+(?:TR?|CH|TRK|TRACK)?)$/i;

/**
 * The track marks common to all mono files of a recording: each track's label after the name. Null if there
 * are none, or if the recorder split its files, which then have other marks too.
 */
export function fileMarksOf(
  day: Day,
  recording: Recording,
  recorder: PartId = FIRST_RECORDER,
): FileMarks | null {
  if (!isMono(recording) || recording.parts.length > 1) return null;
  const labels = trackLabels(day.rig);
  const found = [...(fileTracksOf(tracksOf(day.rig, recorder), recording) ?? [])].map(([track, { file }]) =>
    markOf(stemOf(file), labels.get(track) ?? ''),
  );
  const [first] = found;
  if (!first || !found.every((one) => one !== null && one.stem === first.stem && one.lead === first.lead))
    return null;
  const width = Math.min(2, Math.max(...found.map((one) => one!.width)));
  return { stem: first.stem, pattern: `${first.lead}{track${width > 1 ? `:${width}` : ''}}` };
}

/** A set of mono files rather than a single file. */
export const isMono = ({ parts }: Recording): boolean =>
  parts[0]!.files.length > 1 && parts[0]!.files.every(({ resolved }) => resolved.tracks.length === 1);

/** `markOf('24BT3_tr05', '5')` is the stem 24BT3, the lead _tr and a two-digit number. */
function markOf(name: string, label: string): { stem: string; lead: string; width: number } | null {
  const written = /^\d+$/.test(label) ? /\d+$/.exec(name)?.[0] : label;
  if (!written || !name.toUpperCase().endsWith(written.toUpperCase())) return null;
  if (/^\d+$/.test(label) && Number(written) !== Number(label)) return null;
  const before = name.slice(0, -written.length);
  const lead = LEAD.exec(before)?.[0] ?? '';
  const isPadded = written.startsWith('0');
  return lead ? { stem: before.slice(0, -lead.length), lead, width: isPadded ? written.length : 1 } : null;
}

/** A name pattern with other track marks at its end; null if its marks are elsewhere. */
export function patternWith(marks: string, pattern: string): string | null {
  const without = pattern.replace(/[\s._-]*[^\s._\-{}]*\{track(?::2)?\}$/, '');
  return without.includes('{track') ? null : without + marks;
}
