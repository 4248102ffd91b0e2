import { answersFrom, answersNow } from '../day/answers.ts';
import { leadsOf } from '../day/leads.ts';
import { applyWrites, mutedAt } from '../day/links.ts';
import type { Day, Link, Links, Need, VoiceId } from '../day/model.ts';
import type { Draft } from '../facts/fact.ts';
import { stampFacts } from '../facts/stamp.ts';
import { idSource } from '../shared/ids.ts';
import { pathEnds } from './day-problem.ts';
import type { Move } from './moves.ts';
import type { Plan } from './plan-next-setup.ts';

/**
 * A plan, or the part of it that is accepted, as facts: who is needed, the moves in their order, the gangs it makes,
 * and the mutes that keep whoever only waits off a track that somebody else now has.
 */
export function factsOfPlan(
  day: Day,
  wanted: ReadonlySet<VoiceId>,
  plan: Plan,
  accepted: readonly Move[] = plan.moves,
): Draft[] {
  const { links } = answersNow(day);
  const drafts = [...needDrafts(day, wanted), ...accepted.flatMap((move) => moveDrafts(day, links, move))];
  if (accepted.length < plan.moves.length) return drafts;
  const gangs = gangDrafts(day, plan);
  return [...drafts, ...gangs, ...muteDrafts(day, plan, linksAfter(links, [...drafts, ...gangs]))];
}

/** Who is needed from here on; whoever was and is not any more rests. */
function needDrafts(day: Day, wanted: ReadonlySet<VoiceId>): Draft[] {
  type Said = { voice: VoiceId; need: Need };
  const changed = answersNow(day).voices.flatMap(({ voice: { id }, need }): Said[] => {
    if (wanted.has(id)) return need === 'needed' ? [] : [{ voice: id, need: 'needed' }];
    return need === 'needed' ? [{ voice: id, need: 'resting' }] : [];
  });
  return changed.length > 0 ? [{ kind: 'voices-needed', voices: changed }] : [];
}

function moveDrafts(day: Day, links: Links, move: Move): Draft[] {
  switch (move.kind) {
    case 'take':
      return [{ kind: 'transmitter-worn', transmitter: move.transmitter, voice: null }];
    case 'fit':
      return [{ kind: 'transmitter-worn', transmitter: move.transmitter, voice: move.to }];
    case 'throw':
      return [
        { kind: 'selectors-thrown', selectors: [move.selector], position: move.to === 'b' ? 'b' : 'a' },
      ];
    case 'retune':
      return [{ kind: 'channels-tuned', tunings: [{ channel: move.channel, transmitter: move.to }] }];
    case 'route':
      return [{ kind: 'inputs-sent', routes: [{ input: move.input, tracks: [move.to] }] }];
    case 'replug':
      return [replugDraft(day, links, move)];
  }
}

/** The lead goes where it is planned; whatever sat in that socket is out by that. */
function replugDraft({ rig }: Day, links: Links, move: Move & { kind: 'replug' }): Draft {
  const { lead, input, position } = pathEnds(move.path);
  const output = rig.outputs.find(({ carries }) => carries?.[0] === move.source)?.id;
  const known = [...leadsOf(rig, links)].find(({ id }) => id === lead);
  const from = known?.link.value.from ?? output ?? move.source;
  return { kind: 'leads-plugged', leads: [{ lead, from, to: input, position }] };
}

function gangDrafts(day: Day, { recorded }: Plan): Draft[] {
  const together = new Map<string, string[]>();
  for (const { track, source, gangedWith } of recorded) {
    if (gangedWith.length > 0) together.set(track, [...(together.get(track) ?? []), source]);
  }
  const { links } = answersNow(day);
  return [...together].flatMap(([track, sources]): Draft[] => {
    const known = new Set((links.get(`gang:${track}`)?.value as readonly string[] | undefined) ?? []);
    if (sources.every((source) => known.has(source))) return [];
    return [{ kind: 'gang-declared', track, sources: [...new Set([...known, ...sources])] }];
  });
}

/** Whoever is not recorded is muted where somebody who is has the track; whoever is recorded is heard. */
function muteDrafts(day: Day, { recorded }: Plan, links: Links): Draft[] {
  const on = new Map<string, Set<VoiceId>>();
  for (const { track, voice } of recorded) on.set(track, (on.get(track) ?? new Set()).add(voice));
  const mutes = new Map<string, { what: 'transmitter' | 'input'; muted: boolean }>();
  for (const { track, heard } of answersFrom(day, links).tracks) {
    const its = on.get(track.id);
    if (!its) continue;
    for (const { voice, source, input } of heard) {
      const what = source.transmitter ? 'transmitter' : 'input';
      mutes.set(source.transmitter ?? input, { what, muted: !its.has(voice) });
      if (its.has(voice)) mutes.set(input, { what: 'input', muted: false });
    }
  }
  return [...mutes].flatMap(([part, mute]): Draft[] =>
    (mutedAt(links, part)?.value ?? false) === mute.muted ? [] : [{ kind: 'mute-set', part, ...mute }],
  );
}

/** The links as they would be after these drafts. */
function linksAfter(links: Links, drafts: readonly Draft[]): Links {
  const after = new Map<string, Link>(links);
  const ids = idSource('planneddraft');
  const saying = { day: 'planned', at: 0, zone: 0, nextId: ids.next };
  for (const fact of stampFacts(drafts, saying)) applyWrites(after, fact);
  return after;
}
