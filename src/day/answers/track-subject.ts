import { wornBy } from '../chain/links.ts';
import type { PartId, VoiceId } from '../model.ts';
import type { Answers } from './answers.ts';
import type { Heard } from './track-answers.ts';
import type { Path } from './voice-answers.ts';

/**
 * Whose route to a track is shown, identified by what stays the same along the line: a pack, whoever
 * wears it, or a hardline voice.
 */
export type Subject = { readonly pack: PartId } | { readonly hardline: VoiceId };

export const subjectOf = ({ source, voice }: Heard): Subject =>
  source.transmitter ? { pack: source.transmitter } : { hardline: voice };

export const isSubject = (subject: Subject | null, heard: Heard): boolean =>
  subject !== null && JSON.stringify(subject) === JSON.stringify(subjectOf(heard));

/** The subject at one place on the line. */
export interface SubjectAnswer {
  /** Who wears the pack there, or the hardline voice itself. */
  readonly voice: VoiceId | null;
  /** As it arrives at the track; undefined if it does not. */
  readonly heard: Heard | undefined;
  /** Its path to the track, or else to another, or as far as it goes. */
  readonly path: Path | undefined;
  /** The input it occupies there, wherever that leads. */
  readonly input: PartId | null;
}

export function subjectAt(answers: Answers, track: PartId, subject: Subject): SubjectAnswer {
  const pack = 'pack' in subject ? subject.pack : null;
  const voice = 'pack' in subject ? (wornBy(answers.links, subject.pack)?.value ?? null) : subject.hardline;
  const heard = answers.tracks
    .find((one) => one.track.id === track)
    ?.heard.find((one) => isSubject(subject, one));
  const paths = (answers.voices.find((one) => one.voice.id === voice)?.paths ?? []).filter(
    ({ transmitter, lead }) => transmitter === pack && (pack !== null || lead !== null),
  );
  const path =
    paths.find(({ tracks }) => tracks.includes(track)) ??
    paths.find(({ broken }) => broken === null) ??
    paths[0];
  // If its lead was pushed out or switched away, the input belongs to another.
  const isItsOwn = path?.broken === null || path?.broken === 'no-track';
  return { voice, heard, path, input: heard?.input ?? (isItsOwn ? path.input : null) };
}
