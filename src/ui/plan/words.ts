import type { Day } from '../../day/model.ts';
import { pathEnds } from '../../plan/day/day-paths.ts';
import type { Beside } from '../../plan/day/plan-facts.ts';
import type { Move, MoveReason } from '../../plan/moves.ts';
import type { Addition } from '../../plan/setup/best-addition.ts';
import type { WhyLeftOut } from '../../plan/setup/left-out.ts';
import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { isProven } from '../../plan/setup/proven.ts';
import type { WhatIf } from '../../plan/setup/what-if.ts';
import { countOf, listOf, nameOf, partName } from '../words/chain.ts';
import { positionName, sourceName } from '../words/facts.ts';
import { nameWithRecorder } from '../words/recorder-names.ts';

/** The instruction for a utility. */
export function moveWords(day: Day, move: Move): string {
  const part = (id: string | undefined): string => partName(day.rig, id);
  switch (move.kind) {
    case 'take':
      return `take ${part(move.transmitter)} off ${nameOf(day, move.from)}`;
    case 'fit':
      return `put ${part(move.transmitter)} on ${nameOf(day, move.to)}`;
    case 'throw':
      return `throw ${part(move.selector)} to ${positionName(day, move.selector, move.to === 'b' ? 'b' : 'a')}`;
    case 'replug':
      return `plug ${sourceName(day, move.source)} into ${nameWithRecorder(day, pathEnds(move.path).input)}`;
    case 'retune':
      return `tune ${listOf([
        `${part(move.channel)} to ${part(move.to)}`,
        ...(move.leaving ?? []).map((channel) => `${part(channel)} to nothing`),
      ])}`;
    case 'route':
      return `send ${nameWithRecorder(day, move.input)} to track ${part(move.to)}`;
  }
}

/** What accepting does besides the moves. */
export function besideWords(day: Day, beside: Beside): string {
  const part = (id: string | null | undefined): string => partName(day.rig, id);
  switch (beside.kind) {
    case 'mute-set':
      return `${beside.muted ? 'mute' : 'unmute'} ${part(beside.part)}`;
    case 'channels-tuned':
      return `tune ${listOf(beside.tunings.map(({ channel, transmitter }) => `${part(channel)} to ${part(transmitter) || 'nothing'}`))}`;
    case 'inputs-sent':
      return `send ${listOf(
        beside.routes.map(({ input, tracks }) => {
          const to = listOf(tracks.map(part));
          return `${nameWithRecorder(day, input)} to ${to ? `track ${to}` : 'no track'}`;
        }),
      )}`;
    case 'leads-plugged':
      return `unplug ${listOf(beside.leads.map(({ from }) => sourceName(day, from ?? '') || 'a lead'))}`;
  }
}

const WEARER: Record<(MoveReason & { code: 'given-to' })['wearer'], string> = {
  done: 'is wrapped',
  waiting: 'is not needed now',
  'left-out': 'is left out',
  moved: 'gets another',
};

/** The reason beside a move. */
export function reasonWords(day: Day, move: Move): string {
  const { because } = move;
  const name = nameOf(day, because.voice);
  switch (because.code) {
    case 'pack-out':
      return 'out of order';
    case 'given-to':
      return `${move.kind === 'take' ? nameOf(day, move.from) : ''} ${WEARER[because.wearer]}, ${name} needs it`.trim();
    case 'not-used':
      return `${name} does not need it`;
    case 'has-no-pack':
      return `${name} has no pack`;
    case 'pack-given-away':
      return `${name}'s pack goes to ${nameOf(day, because.to)}`;
    case 'other-pack':
      return `${name} is better heard on it`;
    case 'to-hear':
      return `to hear ${name}`;
    case 'last-track':
      return `${name} keeps the track`;
    case 'own-track':
      return `${name} gets their own track`;
    case 'gang':
      return `${name} shares with ${listOf(because.others.map((id) => nameOf(day, id)))}`;
  }
}

export function leftOutWords(day: Day, why: WhyLeftOut): string {
  switch (why.code) {
    case 'no-transmitter-left':
      return 'no pack is left';
    case 'pinned-transmitter-out':
      return `${partName(day.rig, why.transmitter)} is out of order`;
    case 'no-channel-left':
      return 'no receiver channel is left';
    case 'no-way-in':
      return 'no lead reaches an input';
    case 'no-input-left':
      return 'no input is left';
    case 'no-track-left':
      return 'no track is left';
    case 'more-important-first':
      return 'others come first';
  }
}

const ADDITION = {
  transmitter: 'pack',
  channel: 'receiver channel',
  input: 'input',
  track: 'track',
} as const;

/** The one addition that would help most; undefined while that is being computed. */
export function additionWords(day: Day, addition: Addition | 'none' | undefined): string {
  if (addition === undefined) return 'Working out whether one more pack or input would help…';
  if (addition === 'none') return 'One more pack, channel, input or track would not help by itself.';
  const names = listOf(addition.voices.map((id) => nameOf(day, id)));
  return `One more ${ADDITION[addition.kind]} would record ${names}.`;
}

/** What a plan costs, in one line. */
export function costWords(plan: Plan): string {
  const packs = plan.moves.filter(({ kind }) => kind === 'fit').length;
  const others = plan.moves.length - packs - plan.moves.filter(({ kind }) => kind === 'take').length;
  const ganged = plan.recorded.filter(({ gangedWith }) => gangedWith.length > 0).length;
  const words = [
    plan.moves.length === 0
      ? 'nothing to move'
      : packs > 0
        ? `${countOf(packs, 'pack')} to fit`
        : 'no pack to move',
    others > 0 ? `${countOf(others, 'other change')}` : '',
    ganged > 0 ? `${ganged} in gangs` : '',
    plan.leftOut.length > 0 ? `${plan.leftOut.length} left out` : 'everyone recorded',
  ];
  return words.filter((word) => word !== '').join(' · ');
}

export const WORKING = 'Working it out…';

/** What is proven about the plan, and where a better one may exist or is still being sought. */
export function proofWords(plan: Plan, isLooking: boolean): string {
  const { exact, leftOut } = plan;
  const who = leftOut.length > 0 ? 'Proven: nobody else can be recorded' : 'Everyone is recorded';
  if (isProven(plan)) {
    return leftOut.length > 0 ? `${who}, and no better plan exists.` : 'Proven: no better plan exists.';
  }
  if (isLooking) return 'A first plan; looking for a better one…';
  if (!exact.leftOut) return 'A good plan, not proven; one that records more people may exist.';
  if (!exact.ganged) return `${who}; fewer in gangs may be possible.`;
  if (!exact.packs) return `${who}; fewer packs to move may be possible.`;
  if (!exact.bench) return `${who}, with the fewest packs moved; fewer other changes may be possible.`;
  return `${who}, with the fewest changes; more may be able to keep their track.`;
}

/** What a better plan has over the one shown. */
export function betterWords(better: Plan, shown: Plan): string {
  const ganged = ({ recorded }: Plan) => recorded.filter(({ gangedWith }) => gangedWith.length > 0).length;
  if (better.leftOut.length < shown.leftOut.length) {
    return `A better plan leaves out ${better.leftOut.length}, not ${shown.leftOut.length}.`;
  }
  if (ganged(better) < ganged(shown))
    return `A better plan has ${ganged(better)} in gangs, not ${ganged(shown)}.`;
  if (better.moves.length < shown.moves.length) {
    return `A better plan takes ${countOf(better.moves.length, 'move')}, not ${shown.moves.length}.`;
  }
  return 'There is a better plan.';
}

export function whatIfWords(day: Day, what: WhatIf): string {
  const { isRecorded, moreMoves, fewerMoves, pushedOut, pushedIntoGang } = what;
  // Someone who cannot be recorded does not matter; the plans then differ only in equally good choices.
  if (!isRecorded) return 'could not be recorded';
  const more = moreMoves.length - fewerMoves.length;
  const words = [
    more > 0 ? countOf(more, 'more move') : 'no more moves',
    pushedOut.length > 0 ? `${listOf(pushedOut.map((id) => nameOf(day, id)))} left out` : '',
    pushedIntoGang.length > 0 ? `${listOf(pushedIntoGang.map((id) => nameOf(day, id)))} into a gang` : '',
  ];
  return words.filter((word) => word !== '').join(', ');
}
