import { feedName, feedsOf, listenersOf } from '../../day/answers/listeners.ts';
import type { Day, PartId } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import type { ListenerFields } from '../../facts/kinds/listener-described.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

const LONGEST = 200;

/** The boom operator hears the own mic; everybody else, to begin with, the mix. */
export const BOOM_OPERATOR = 'Boom operator';
export const OWN_BOOM = 'own boom';
export const MIX = 'mix';

/** Somebody gets a receiver: the first free number, on the mix, in one tap. All of it can be changed. */
export function addListener(day: Day, listener: string, who: string): CommandResult {
  const name = who.trim();
  const [mix] = feedsOf(day);
  const hears: ListenerFields =
    name === BOOM_OPERATOR || !mix?.mix
      ? { part: null, hears: name === BOOM_OPERATOR ? OWN_BOOM : MIX }
      : { part: mix.id, hears: feedName(day, mix) };
  const fields = { name, receiver: freeReceiver(day), ...hears, handedOut: true };
  return wrongTexts(fields) ?? ok([{ kind: 'listener-described', listener, fields }]);
}

/** `IFB 1`, or the first number that nobody has. */
function freeReceiver(day: Day): string {
  const taken = new Set(listenersOf(day).map(({ receiver }) => receiver));
  let number = 1;
  while (taken.has(`IFB ${number}`)) number += 1;
  return `IFB ${number}`;
}

/** Sets fields of a listener: who it is, the receiver, its channel. */
export function describeListener(day: Day, listener: string, said: ListenerFields): CommandResult {
  const texts = Object.entries(said).map(([field, value]) => [
    field,
    typeof value === 'string' ? value.trim() : value,
  ]);
  const fields = Object.fromEntries(texts) as ListenerFields;
  return (
    wrongListeners(day, [listener]) ??
    wrongTexts(fields) ??
    ok([{ kind: 'listener-described', listener, fields }])
  );
}

/** A listener hears a mix or a send of the rig. */
export function hearPart(day: Day, listener: string, id: PartId): CommandResult {
  const part = feedsOf(day).find((one) => one.id === id);
  if (!part) return missing('send', id);
  return describeListener(day, listener, { part: id, hears: feedName(day, part) });
}

/** What is heard is no part of the rig, and said in words. */
export const hearWords = (day: Day, listener: string, hears: string): CommandResult =>
  describeListener(day, listener, { part: null, hears });

/** Their receivers were handed out, or came back. */
export const handOut = (day: Day, listeners: readonly string[], handedOut: boolean): CommandResult =>
  wrongListeners(day, listeners) ??
  ok(listeners.map((listener): Draft => ({ kind: 'listener-described', listener, fields: { handedOut } })));

function wrongListeners(day: Day, listeners: readonly string[]): Result<never> | undefined {
  if (listeners.length === 0) return fail({ code: 'nothing-chosen' });
  const standing = new Set(listenersOf(day).map(({ id }) => id));
  const unknown = listeners.find((id) => !standing.has(id));
  return unknown === undefined ? undefined : missing('listener', unknown);
}

function wrongTexts({ name, receiver, channel, hears }: ListenerFields): Result<never> | undefined {
  if (name === '') return fail({ code: 'name-empty' });
  const isLong = [name, receiver, channel, hears].some((text) => (text?.length ?? 0) > LONGEST);
  return isLong ? fail({ code: 'name-too-long', longest: LONGEST }) : undefined;
}
