import { answersAtTake } from '../day/answers/answers.ts';
import { voiceName } from '../day/answers/track-answers.ts';
import { isMissed, type VoiceAnswer } from '../day/answers/voice-answers.ts';
import { nameTypedFor } from '../day/chain/links.ts';
import type { Day, PartId, TakeId } from '../day/model.ts';
import { recorderOfPart } from '../day/recorder-of-part.ts';
import { recordersOf } from '../day/recorders/rolling.ts';
import { takesNumberedTwice } from '../day/takes.ts';
import { unknownWords } from '../day/unknown-words.ts';
import { cleanLine } from './clean-text.ts';
import { filesNamedTwice } from './file-matters.ts';
import { at, type Matter } from './matter.ts';
import { onBackupOnly } from './recorders.ts';
import { recordersText } from './recorders-text.ts';
import type { TakeLine } from './take-lines.ts';
import type { TrackLine } from './track-lines.ts';

/** What the day alone shows, most urgent first; other days and phones may add more. */
export function openMatters(day: Day, lines: readonly TakeLine[]): Matter[] {
  return [
    ...unknownFacts(day),
    ...wordsUnknown(day),
    ...backupOnly(day, lines),
    ...takesWith(lines, 'take-open', (line) => line.status.includes('rolling')),
    ...numberedTwice(day, lines),
    ...clashes(lines),
    ...inputClashes(day, lines),
    ...unrecorded(day, lines),
    ...typedOver(day, lines),
    ...filesNamedTwice(lines),
    ...takesWith(lines, 'takes-without-start', (line) => line.status.includes('no-start')),
    ...takesWith(lines, 'takes-without-length', (line) => line.status.includes('no-length')),
  ];
}

/** What an editor needs of the head and nobody entered. */
export function headLacks({
  production,
  mixer,
  date,
  rolls,
}: {
  readonly production: string;
  readonly mixer: string;
  readonly date: string;
  readonly rolls: readonly string[];
}): Matter[] {
  const names = [
    ...(production ? [] : ['production']),
    ...(mixer ? [] : ['mixer']),
    ...(rolls.length > 0 ? [] : ['roll']),
    ...(date ? [] : ['date']),
  ];
  return names.length > 0 ? [{ code: 'head-lacks', names }] : [];
}

const unknownFacts = (day: Day): Matter[] =>
  day.unknown.length > 0 ? [{ code: 'facts-unknown', count: day.unknown.length }] : [];

function wordsUnknown(day: Day): Matter[] {
  const words = unknownWords(day);
  return words.length > 0 ? [{ code: 'words-unknown', count: words.length, names: words }] : [];
}

function takesWith(lines: readonly TakeLine[], code: string, has: (line: TakeLine) => boolean): Matter[] {
  const found = lines.filter(has);
  return found.length > 0 ? [{ code, ...at(found) }] : [];
}

function backupOnly(day: Day, lines: readonly TakeLine[]): Matter[] {
  const found = onBackupOnly(lines);
  const [first] = recordersOf(day);
  return found.length > 0 ? [{ code: 'on-backup-only', name: cleanLine(first!.name), ...at(found) }] : [];
}

function numberedTwice(day: Day, lines: readonly TakeLine[]): Matter[] {
  const byId = new Map(lines.map((line) => [line.takeId, line]));
  return takesNumberedTwice(day).map((takes) => ({
    code: 'takes-numbered-twice',
    ...at(takes.map(({ id }) => byId.get(id)!)),
  }));
}

/** Merges what shows at several takes into one matter each. */
class Gathered {
  readonly #found = new Map<string, { matter: Matter; lines: TakeLine[] }>();

  add(key: string, matter: Matter, line: TakeLine): void {
    const known = this.#found.get(key);
    if (known) known.lines.push(line);
    else this.#found.set(key, { matter, lines: [line] });
  }

  matters(): Matter[] {
    return [...this.#found.values()].map(({ matter, lines }) => ({ ...matter, ...at(lines) }));
  }
}

function clashes(lines: readonly TakeLine[]): Matter[] {
  const found = new Gathered();
  for (const line of lines) {
    for (const [{ track, name, state }, number] of tracksNumbered(line)) {
      if (state === 'clash') found.add(`${track} ${name}`, { code: 'clash', track, number, name }, line);
    }
  }
  return found.matters();
}

/** The tracks of all recorders of a take: `'5'`, or `'5 of Bag'` where recorders have tracks of their own. */
const tracksNumbered = ({ lists }: TakeLine): (readonly [TrackLine, number: string])[] =>
  lists.flatMap(({ on, tracks }) =>
    tracks.map(
      (line) => [line, on.length > 0 ? `${line.number} of ${recordersText(on)}` : line.number] as const,
    ),
  );

/** Two voices on one input that feeds no track are not heard, so no track shows the clash. */
function inputClashes(day: Day, lines: readonly TakeLine[]): Matter[] {
  const found = new Gathered();
  for (const line of lines) {
    if (line.kind === 'mos') continue;
    const owners = line.lists.map(({ owner }) => owner);
    for (const { input, state, reach } of answersAtTake(day, line.takeId).inputs) {
      if (state !== 'clash' || reach.tracks.length > 0) continue;
      if (!owners.includes(recorderOfPart(input))) continue;
      found.add(input.id, { code: 'clash-on-input', input: input.id, name: cleanLine(input.name) }, line);
    }
  }
  return found.matters();
}

/** Tells apart the muted, and those who gave up a pack without being marked as resting or done. */
function codeOfMissed({ state, need, paths }: VoiceAnswer): string {
  if (state === 'muted') return 'voice-muted';
  return need === null && paths[0]?.broken === 'pack-gone' ? 'voice-pack-gone' : 'voice-unrecorded';
}

function unrecorded(day: Day, lines: readonly TakeLine[]): Matter[] {
  const found = new Gathered();
  for (const line of lines) {
    if (line.kind === 'mos') continue;
    for (const answer of answersAtTake(day, line.takeId).voices.filter(isMissed)) {
      const { id: voice } = answer.voice;
      const code = codeOfMissed(answer);
      found.add(`${code} ${voice}`, { code, voice, name: cleanLine(voiceName(day, voice)) }, line);
    }
  }
  return found.matters();
}

/** A name typed for somebody stays on the track when the pack goes to somebody else. */
function typedOver(day: Day, lines: readonly TakeLine[]): Matter[] {
  const found = new Gathered();
  const firstOn = new Map<string, string>();
  for (const line of lines) {
    for (const [{ track, name, typed, voices }, number] of tracksNumbered(line)) {
      if (!typed) continue;
      const by = `${track} ${typedBy(day, line.takeId, track)}`;
      const now = voices.map(({ voice }) => voice).join(' ');
      const first = firstOn.get(by) ?? now;
      firstOn.set(by, first);
      const on = voices.map(({ name }) => name).join(', ');
      if (first !== now)
        found.add(`${by} ${now}`, { code: 'name-typed-over', track, number, name, on }, line);
    }
  }
  return found.matters();
}

const typedBy = (day: Day, take: TakeId, track: PartId): string =>
  nameTypedFor(answersAtTake(day, take).links, track)?.by ?? '';
