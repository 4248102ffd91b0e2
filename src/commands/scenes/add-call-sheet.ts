import type { CastEntry } from '../../callsheet/cast/cast-entry.ts';
import type { SheetScene } from '../../callsheet/scenes/sheet-scene.ts';
import { castOf } from '../../day/cast-of-scene.ts';
import { mergeVoice } from '../../day/fold/parts-list.ts';
import type { Day, Voice, VoiceId } from '../../day/model.ts';
import type { Scene } from '../../day/scene.ts';
import { sceneNumbered, scenesInOrder } from '../../day/scenes-in-order.ts';
import type { Draft } from '../../facts/fact.ts';
import { SCENE_TEXT_LONGEST, type SceneFields } from '../../facts/kinds/scenes-described.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { addCast } from '../day/describe.ts';

/** What is taken of a scene on a sheet. */
export type SceneEntry = Pick<
  SheetScene,
  'number' | 'intExt' | 'set' | 'dayNight' | 'pages' | 'cast' | 'crowd' | 'synopsis'
>;

export interface PlannedScene {
  readonly entry: SceneEntry;
  readonly does: 'add' | 'describe' | 'nothing';
  readonly known: Scene | undefined;
  /** A row above has the same number: what is said of both is one scene. */
  readonly twice: boolean;
}

const SCENE_LONGEST = { ...SCENE_TEXT_LONGEST, crowd: 200, synopsis: 4000 } as const;
const MOST_IN_A_SCENE = 200;
const plain = (text: string): string => text.toUpperCase().replace(/\s+/g, '');

/** Matches every scene of a sheet with those of the day, by number. */
export function planScenes(day: Day, entries: readonly SceneEntry[]): PlannedScene[] {
  const seen = new Set<string>();
  return entries.map((entry) => {
    const twice = seen.has(plain(entry.number));
    seen.add(plain(entry.number));
    const known = sceneNumbered(day, entry.number);
    if (!known) return { entry, does: 'add', known, twice };
    const fields = changed(known, saidOf(day, [...day.voices.values()], entry));
    return { entry, does: Object.keys(fields).length > 0 ? 'describe' : 'nothing', known, twice };
  });
}

/**
 * Adds the performers and scenes of a call sheet as one action. Those already there, by number, are updated and
 * not doubled; what the sheet leaves empty is unchanged. The order to shoot becomes that of the sheet.
 */
export function addCallSheet(
  day: Day,
  { cast, scenes }: { readonly cast: readonly CastEntry[]; readonly scenes: readonly SceneEntry[] },
  newId: () => string,
): CommandResult {
  if (scenes.length === 0) return addCast(day, cast, newId);
  const people = cast.length > 0 ? addCast(day, cast, newId) : ok([]);
  if (!people.ok && people.problem.code !== 'nothing-changed') return people;
  const drafts = people.ok ? people.value : [];
  const said = scenesSaid(day, voicesAfter(day, drafts), scenes, newId);
  const all: Draft[] = [
    ...drafts,
    ...(said.length > 0 ? [{ kind: 'scenes-described', scenes: said } as const] : []),
  ];
  return all.length === 0 ? fail({ code: 'nothing-changed' }) : ok(all);
}

interface Said {
  readonly scene: string;
  readonly fields: SceneFields;
}

function scenesSaid(
  day: Day,
  voices: readonly Voice[],
  entries: readonly SceneEntry[],
  newId: () => string,
): Said[] {
  const one = joined(entries).map((entry, at) => {
    const known = sceneNumbered(day, entry.number);
    const fields = { ...saidOf(day, voices, entry), order: at + 1 };
    return { scene: known?.id ?? newId(), fields: known ? changed(known, fields) : fields };
  });
  const listed = new Set(one.map(({ scene }) => scene));
  const behind = scenesInOrder(day)
    .filter(({ id }) => !listed.has(id))
    .map((known, at) => ({ scene: known.id, fields: changed(known, { order: one.length + at + 1 }) }));
  return [...one, ...behind].filter(({ fields }) => Object.keys(fields).length > 0).slice(0, 500);
}

/** A scene in two strips is one scene with the people of both. */
function joined(entries: readonly SceneEntry[]): SceneEntry[] {
  const byNumber = new Map<string, SceneEntry>();
  for (const entry of entries) {
    const before = byNumber.get(plain(entry.number));
    const cast = before ? [...new Set([...before.cast, ...entry.cast])] : entry.cast;
    byNumber.set(plain(entry.number), { ...(before ?? entry), cast });
  }
  return [...byNumber.values()];
}

function voicesAfter(day: Day, drafts: readonly Draft[]): Voice[] {
  const voices = new Map<VoiceId, Voice>(day.voices);
  for (const draft of drafts)
    if (draft.kind === 'voice-described')
      voices.set(draft.voice, mergeVoice(voices.get(draft.voice), draft.voice, draft.fields));
  return [...voices.values()].filter(({ struck }) => !struck);
}

/** The fields that a sheet says of a scene; people as voices where the cast has them. */
function saidOf(day: Day, voices: readonly Voice[], entry: SceneEntry): SceneFields {
  const texts = (Object.keys(SCENE_LONGEST) as (keyof typeof SCENE_LONGEST)[])
    .filter((name) => entry[name] !== '')
    .map((name) => [name, entry[name].slice(0, SCENE_LONGEST[name])] as const);
  const people = peopleOf(day, voices, entry);
  return { ...Object.fromEntries(texts), ...(entry.cast.length > 0 && people) };
}

function peopleOf(day: Day, voices: readonly Voice[], { number, cast }: SceneEntry) {
  const known = sceneNumbered(day, number);
  const hardline = known ? castOf(day, known).filter(({ kind }) => kind !== 'performer') : [];
  const found = cast.map((name) => ({
    name,
    ids: voices.filter((voice) => isNamed(voice, name)).map(({ id }) => id),
  }));
  return {
    // A sheet knows nothing of booms and plants.
    voices: [...new Set([...found.flatMap(({ ids }) => ids), ...hardline.map(({ id }) => id)])].slice(
      0,
      MOST_IN_A_SCENE,
    ),
    others: found
      .filter(({ ids }) => ids.length === 0)
      .map(({ name }) => name.slice(0, 200))
      .slice(0, MOST_IN_A_SCENE),
  };
}

const isNamed = ({ kind, number, part }: Voice, name: string): boolean =>
  kind === 'performer' && [number, part].some((one) => one !== '' && plain(one) === plain(name));

function changed(known: Scene, fields: SceneFields): SceneFields {
  return Object.fromEntries(
    Object.entries(fields).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(known[name as keyof SceneFields]),
    ),
  );
}
