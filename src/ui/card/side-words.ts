import type { Difference } from '../../reconcile/differences/difference.ts';
import { NO_ROLL } from '../../report/rolls.ts';
import { bitDepthWords, layoutWords, rateWords, sampleRateWords } from '../../report/setting-words.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { countOf, listOf } from '../words/chain.ts';

/** What the log says and what the card says; null where the sentence says it all. */
export function sideWords(one: Difference): { readonly log: string; readonly card: string } | null {
  const both = <Value>(was: Value, is: Value, words: (value: Value) => string) => ({
    log: words(was),
    card: words(is),
  });
  switch (one.code) {
    case 'circled-differs':
      return both(one.was, one.is, (circled) => (circled ? 'circled' : 'not circled'));
    case 'take-type-differs':
      return both(one.was, one.is, typesText);
    case 'roll-differs':
      return both(one.was, one.is, (roll) => roll || NO_ROLL);
    case 'sample-rate-differs':
      return both(one.was, one.is, (rate) => sampleRateWords(Number(rate)));
    case 'bit-depth-differs':
      return both(one.was, one.is, (bits) => bitDepthWords(String(bits) as never));
    case 'timecode-rate-differs':
      return both(one.was, one.is, (rate) => rateWords(String(rate) as never));
    case 'file-layout-differs':
      return both(one.was, one.is, (layout) => layoutWords(layout === 'mono' ? 'mono' : 'poly'));
    case 'start-differs':
    case 'length-differs':
      return both(one.was, one.is, (stamp) => (stamp ? formatTimecode(stamp.frames, stamp.rate) : 'nothing'));
    case 'start-not-logged':
    case 'length-not-logged':
      return { log: 'nothing', card: formatTimecode(one.is.frames, one.is.rate) };
    case 'note-not-logged':
      return { log: listOf(one.was) || 'nothing', card: one.is };
    case 'field-never-changes':
      return one.was.length > 0 ? { log: someOf(one.was), card: one.is } : null;
    case 'file-twice':
      return { log: one.was, card: listOf(one.is) };
    case 'recordings-of-another-day':
      return { log: one.was, card: listOf(one.is) };
    case 'slate-differs':
    case 'take-number-differs':
    case 'track-name-differs':
    case 'tracks-swapped':
    case 'file-name-differs':
    case 'file-names-differ':
      return both<string | number>(one.was, one.is, (value) => String(value) || 'nothing');
    default:
      return null;
  }
}

const MOST = 4;

const someOf = (values: readonly string[]): string =>
  values.length > MOST
    ? `${values.slice(0, MOST).join(', ')} and ${countOf(values.length - MOST, 'more', 'more')}`
    : listOf(values);

/** Kinds of takes in the log, and the words of TAKE_TYPE (iXML 3.01). */
const TYPE_WORDS: Readonly<Record<string, string>> = {
  take: 'take',
  pickup: 'pickup',
  wild: 'wild track',
  tone: 'room tone',
  mos: 'MOS',
  'false-start': 'false start',
  'no-good': 'NG',
  NO_GOOD: 'NG',
  FALSE_START: 'false start',
  WILD_TRACK: 'wild track',
  PICKUP: 'pickup',
  REHEARSAL: 'rehearsal',
  ANNOUNCEMENT: 'announcement',
  SOUND_GUIDE: 'sound guide',
};

/** A recorder's own word is shown as it wrote it. */
const typesText = (types: readonly string[]): string =>
  listOf(types.map((type) => TYPE_WORDS[type] ?? type)) || 'nothing';
