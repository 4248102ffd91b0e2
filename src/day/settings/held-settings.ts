import {
  FIRST_RECORDER,
  type RecorderSettings,
  SETTING_FIELDS,
  type SettingField,
} from '../../facts/kinds/recorder-set.ts';
import { alongTakes } from '../chain/along-takes.ts';
import { key, type LinkReader, setTo, writesOfItem } from '../chain/links.ts';
import { filledHeader } from '../header.ts';
import type { Day, Header, LineItem, PartId, TakeId } from '../model.ts';

/** What a recorder is set to at one place on the line. */
export type Settings = { readonly [Field in SettingField]: NonNullable<Header[Field]> };

/** Those of them that somebody said; the others are as in the header. */
export type SaidSettings = { readonly [Field in SettingField]?: RecorderSettings[Field] };

/** What holds for a recorder: what the line says, and with the rest as the day's header has it. */
export interface Held {
  readonly said: SaidSettings;
  readonly settings: Settings;
}

/** What the line says of each recorder at takes in a row, which share one object. */
type SaidOfEach = Readonly<Record<PartId, SaidSettings>>;

const NOTHING: SaidOfEach = {};

interface Remembered {
  readonly byTake: ReadonlyMap<TakeId, SaidOfEach>;
  readonly held: WeakMap<SaidOfEach, Map<PartId, Held>>;
}

const remembered = new WeakMap<Day, Remembered>();

function rememberedOf(day: Day): Remembered {
  const known = remembered.get(day);
  if (known) return known;
  const byTake = isAnySaid(day) ? alongTakes(day, NOTHING, saidAfter) : new Map<TakeId, SaidOfEach>();
  const found = { byTake, held: new WeakMap<SaidOfEach, Map<PartId, Held>>() };
  remembered.set(day, found);
  return found;
}

/** Days of earlier versions only have the header. */
const isAnySaid = ({ rig, tail }: Pick<Day, 'rig' | 'tail'>): boolean =>
  isSaidOf(tail, FIRST_RECORDER) || rig.recorders.some(({ id }) => isSaidOf(tail, id));

/** Whether the line says anything of a recorder. */
export const isSaidOf = (links: LinkReader, recorder: PartId): boolean =>
  SETTING_FIELDS.some((field) => setTo(links, field, recorder));

function saidAfter(each: SaidOfEach, item: LineItem): SaidOfEach {
  if (item.fact.kind !== 'recorder-set') return each;
  const { recorder = FIRST_RECORDER } = item.fact;
  const written = new Map(writesOfItem(item, []).map(([name, value]) => [name, value]));
  const said = SETTING_FIELDS.filter((field) => written.has(key.set(field, recorder))).map((field) => [
    field,
    written.get(key.set(field, recorder)),
  ]);
  return said.length === 0
    ? each
    : { ...each, [recorder]: { ...each[recorder], ...Object.fromEntries(said) } };
}

/** What held for a recorder at a take. Takes in a row for which the same holds share one object. */
export function heldAtTake(day: Day, take: TakeId, recorder: PartId): Held {
  const { byTake, held } = rememberedOf(day);
  const each = byTake.get(take) ?? NOTHING;
  const known = held.get(each) ?? new Map<PartId, Held>();
  held.set(each, known);
  const found = known.get(recorder) ?? heldOf(day, each[FIRST_RECORDER], each[recorder]);
  known.set(recorder, found);
  return found;
}

/** What holds for it now. */
export const heldNow = (day: Pick<Day, 'header' | 'tail'>, recorder: PartId): Held =>
  heldOf(day, saidIn(day.tail, FIRST_RECORDER), saidIn(day.tail, recorder));

const saidIn = (links: LinkReader, recorder: PartId): SaidSettings =>
  Object.fromEntries(
    SETTING_FIELDS.flatMap((field) => {
      const link = setTo(links, field, recorder);
      return link ? [[field, link.value]] : [];
    }),
  );

/** A recorder of which nothing is said is set as the first one. */
function heldOf(
  day: Pick<Day, 'header'>,
  ofFirst: SaidSettings | undefined,
  own: SaidSettings | undefined,
): Held {
  const said: SaidSettings = { ...ofFirst, ...own };
  const header = filledHeader(day.header);
  const settings = Object.fromEntries(SETTING_FIELDS.map((field) => [field, said[field] ?? header[field]]));
  return { said, settings: settings as unknown as Settings };
}
