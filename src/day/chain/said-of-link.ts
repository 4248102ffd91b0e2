import type { Draft, Fact, FactOf } from '../../facts/fact.ts';
import { bodyOf } from '../../facts/kinds/envelope.ts';
import { MIC_FIELDS } from '../../facts/kinds/mic-mounted.ts';
import { SETTING_FIELDS } from '../../facts/kinds/recorder-set.ts';
import { gangNamed } from './gang-links.ts';
import { writesOf } from './links.ts';

/** Kinds that write several links at once, with the list that has one item for each. */
const LISTS: { readonly [Name in Fact['kind']]?: string } = {
  'channels-tuned': 'tunings',
  'leads-plugged': 'leads',
  'selectors-thrown': 'selectors',
  'inputs-sent': 'routes',
  'voices-needed': 'voices',
};

/** The part of a fact that concerns one link, as a new draft; undefined if there is none. */
export function saidOfLink(fact: Fact, link: string): Draft | undefined {
  const gang = gangNamed(link);
  // A fact that ended every gang of the track is restated for this one alone.
  if (gang && fact.kind === 'gang-declared' && fact.sources.length === 0)
    return says(fact, link) ? { kind: 'gang-ended', ...gang } : undefined;
  if (fact.kind === 'recorder-set') return settingOfLink(fact, link);
  if (fact.kind === 'mic-mounted') return micOfLink(fact, link);
  const body = bodyOf(fact);
  const list = LISTS[fact.kind];
  if (!list) return says(fact, link) ? (body as Draft) : undefined;
  const items = body[list] as readonly unknown[];
  const item = items.find((one) => says({ ...fact, [list]: [one] } as Fact, link));
  return item === undefined ? undefined : ({ ...body, [list]: [item] } as Draft);
}

function settingOfLink(fact: FactOf<'recorder-set'>, link: string): Draft | undefined {
  const { settings, ...body } = bodyOf(fact) as Pick<typeof fact, 'kind' | 'recorder' | 'settings'>;
  const field = SETTING_FIELDS.find((one) => says({ ...fact, settings: { [one]: settings[one] } }, link));
  return field && { ...body, settings: { [field]: settings[field] } };
}

function micOfLink(fact: FactOf<'mic-mounted'>, link: string): Draft | undefined {
  const { mic, ...body } = bodyOf(fact) as Pick<typeof fact, 'kind' | 'voice' | 'transmitter' | 'mic'>;
  const field = MIC_FIELDS.find((one) => says({ ...fact, mic: { [one]: mic[one] } }, link));
  if (field) return { ...body, mic: { [field]: mic[field] } };
  return says(fact, link) ? { ...body, mic: {} } : undefined;
}

const says = (fact: Fact, link: string): boolean => writesOf(fact, [link]).some(([name]) => name === link);
