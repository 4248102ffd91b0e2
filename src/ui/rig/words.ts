import type { InputAnswer } from '../../day/answers/input-answers.ts';
import { tunedTo } from '../../day/chain/links.ts';
import type { Arrival } from '../../day/chain/reach.ts';
import {
  type Day,
  type InputKind,
  type Links,
  type Part,
  RESERVED_USES,
  type ReservedUse,
  type Rig,
} from '../../day/model.ts';
import { type Open, wordIn, wordOf } from '../../shared/open-word.ts';
import { INPUT_WORD, nameOf, partName } from '../words/chain.ts';
import { INPUT_KIND_WORD } from '../words/connectors.ts';
import { positionName } from '../words/facts.ts';
import { runWords } from '../words/number-runs.ts';
import { kindCount } from '../words/rig-spec.ts';

/** `4 mic, 4 AES3, 2 returns, 8 slots`, in reading order. */
export function inputsWords(inputs: readonly Part[]): string {
  const counts = new Map<Open<InputKind>, number>();
  for (const { inputKind = 'mic' } of inputs) counts.set(inputKind, (counts.get(inputKind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => kindCount(kind, count)).join(', ');
}

/** `near 3, A3, Ines`: what comes in by a lead, back to the body. */
export function arrivalWords(day: Day, arrival: Arrival | null): string {
  if (!arrival) return 'nothing';
  const kept = day.rig.byId.get(arrival.from)?.reserved;
  if (kept) return `${partName(day.rig, arrival.from)}, ${reservedWord(kept)}`;
  return arrival.sources
    .map(({ id, transmitter, voice }) =>
      voice === id || (!transmitter && day.voices.has(id))
        ? `${nameOf(day, id)}, hardline`
        : [partName(day.rig, id), partName(day.rig, transmitter), voice ? nameOf(day, voice) : '']
            .filter(Boolean)
            .join(', '),
    )
    .join(' + ');
}

export function tracksWords(rig: Rig, tracks: readonly string[]): string {
  const there = tracks.filter((id) => rig.byId.has(id));
  return there.length === 0 ? 'no track' : `track ${runWords(there.map((id) => partName(rig, id)))}`;
}

/** What reaches an input, at which selector position, and where it goes. */
export function inputWords(day: Day, { reach }: InputAnswer): string {
  const to = tracksWords(day.rig, reach.tracks);
  const from = reach.arrival ? arrivalWords(day, reach.arrival) : 'nothing reaches it';
  if (!reach.selector) return `${from} › ${to}`;
  const { part, position } = reach.selector;
  return `${positionName(day, part.id, position)}: ${from} › ${to}`;
}

export function inputStateWords({ input, state }: InputAnswer): string {
  const kind = wordIn(INPUT_KIND_WORD, input.inputKind ?? 'mic');
  const word = input.reserved ? reservedWord(input.reserved) : INPUT_WORD[state];
  return word ? `${kind}, ${word}` : kind;
}

/** The receiver channels tuned to a pack. */
export const channelsOn = (rig: Rig, links: Links, transmitter: string): Part[] =>
  rig.channels.filter(({ id }) => tunedTo(links, id)?.value === transmitter);

export const reservedWord = (use: Open<ReservedUse>): string => wordOf(RESERVED_USES, use);
