import { answersNow } from '../../day/answers/answers.ts';
import { takesWith } from '../../day/answers/heard-with.ts';
import { voiceName } from '../../day/answers/track-answers.ts';
import { castInOrder } from '../../day/cast-in-order.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { wornBy } from '../../day/chain/links.ts';
import type { Day, Need, VoiceId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Open } from '../../shared/open-word.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

/** Priorities from here on were never set by anybody. */
const UNRANKED = 500;
const MOST_RANKED = UNRANKED - 1;

/** The priority of the next voice added: after all that have one. Hardlines stay at the end of the scale. */
export function nextRank(day: Day): number {
  const ranked = castInOrder(day).filter(({ kind, priority }) => kind === 'performer' && priority < UNRANKED);
  return Math.min(MOST_RANKED, Math.max(0, ...ranked.map(({ priority }) => priority)) + 1);
}

/**
 * Removes somebody from the cast: packs come off, leads hang free. Fails with `voice-on-takes` if they are on
 * a take, since its tracks would lose a name; mark them as done instead.
 */
export function strikeVoice(day: Day, voice: VoiceId): CommandResult {
  if (!day.voices.has(voice)) return missing('voice', voice);
  const takes = takesWith(day, voice);
  if (takes.length > 0) {
    const name = voiceName(day, voice);
    return fail({ code: 'voice-on-takes', name, take: takeText(takes[0]!), count: takes.length });
  }
  const { links } = answersNow(day);
  const off = day.rig.transmitters
    .filter(({ id }) => wornBy(links, id)?.value === voice)
    .map(({ id }): Draft => ({ kind: 'transmitter-worn', transmitter: id, voice: null }));
  const leads = [...leadsOf(day.rig, links)]
    .filter(({ link }) => link.value.from === voice && link.value.to !== null)
    .map(({ id, link }) => ({ lead: id, ...link.value, to: null }));
  const unplugged: Draft[] = leads.length > 0 ? [{ kind: 'leads-plugged', leads }] : [];
  return ok([...off, ...unplugged, { kind: 'voice-described', voice, fields: { struck: true } }]);
}

/** Brings somebody back into the cast, wearing nothing. */
export function reinstateVoice(day: Day, voice: VoiceId): CommandResult {
  if (!day.voices.has(voice)) return missing('voice', voice);
  return ok([{ kind: 'voice-described', voice, fields: { struck: false } }]);
}

/**
 * Sets who is needed for the coming setup, as one action. Records only changes: somebody wanted becomes
 * needed, somebody needed but no longer wanted rests, and those done or never named stay so.
 */
export function sayWhoIsNeeded(day: Day, wanted: ReadonlyMap<VoiceId, boolean>): CommandResult {
  const { voices } = answersNow(day);
  const those = (need: Need, test: (want: boolean, now: Open<Need> | null) => boolean): Draft[] => {
    const changed = voices.filter((answer) => {
      const want = wanted.get(answer.voice.id);
      return want !== undefined && test(want, answer.need);
    });
    return changed.length === 0
      ? []
      : [{ kind: 'voices-needed', voices: changed.map(({ voice }) => ({ voice: voice.id, need })) }];
  };
  const said = [
    ...those('needed', (want, now) => want && now !== 'needed'),
    ...those('resting', (want, now) => !want && now === 'needed'),
  ];
  return said.length === 0 ? fail({ code: 'nothing-changed' }) : ok(said);
}

/** `movedBy(['a', 'b', 'c'], 'c', -1)` is `['a', 'c', 'b']`; it stops at either end. */
export function movedBy(order: readonly VoiceId[], voice: VoiceId, steps: number): VoiceId[] {
  const from = order.indexOf(voice);
  if (from < 0) return [...order];
  const to = Math.min(order.length - 1, Math.max(0, from + steps));
  return order.toSpliced(from, 1).toSpliced(to, 0, voice);
}

/** Sets priorities 1, 2, 3 in this order; records only those that change. */
export function rankVoices(day: Day, order: readonly VoiceId[]): CommandResult {
  const unknown = order.find((id) => !day.voices.has(id));
  if (unknown !== undefined) return missing('voice', unknown);
  const said = order
    .map((voice, at) => ({ voice, priority: Math.min(MOST_RANKED, at + 1) }))
    .filter(({ voice, priority }) => day.voices.get(voice)!.priority !== priority)
    .map(({ voice, priority }): Draft => ({ kind: 'voice-described', voice, fields: { priority } }));
  return said.length === 0 ? fail({ code: 'nothing-changed' }) : ok(said);
}
