import { workingHeader } from '../../day/header.ts';
import type { Day } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { Difference, DifferenceCode } from '../../reconcile/differences/difference.ts';
import type { RateId } from '../../time/rate.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { countOf, listOf } from '../words/chain.ts';
import { warningWords } from './wave-warnings.ts';

type Of<Code extends DifferenceCode> = Extract<Difference, { code: Code }>;

const frames = ({ detail }: Of<'start-differs' | 'length-differs'>, day: Day): string =>
  framesText(detail.frames, workingHeader(day, '25').timecodeRate);
const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;
const inFiles = ({ detail }: { readonly detail: { readonly count: number } }): string =>
  ` in ${countOf(detail.count, 'recording')}`;

const SENTENCES: { readonly [Code in DifferenceCode]: (one: Of<Code>, day: Day) => string } = {
  'take-not-recorded': () => 'Logged, but not on the card',
  'take-on-backup-only': ({ is }) => `Only on ${listOf(is)}, whose card is not here`,
  'match-unsure': () => 'Which of these files is it?',
  'recording-not-logged': () => 'Recorded, but not logged',
  'mos-recorded': () => 'Logged as MOS, but the card has sound',
  'track-not-recorded': ({ detail, recording }) =>
    `Track ${detail.number} is not in the file${recording.files.length > 1 ? 's' : ''}${inTakes(detail)}`,
  'file-set-incomplete': ({ was, is }) => `Files of this recording are missing: ${is} of ${was} are there`,
  'slate-differs': () => 'Slate differs',
  'take-number-differs': () => 'Take number differs',
  'track-name-differs': ({ detail }) => `Track ${detail.number} has a different name${inTakes(detail)}`,
  'tracks-swapped': ({ detail }) =>
    `Tracks ${listOf([detail.number, ...detail.others])} are swapped${inTakes(detail)}`,
  'start-differs': (one, day) =>
    `The recorder started ${frames(one, day)} ${one.detail.frames > 0 ? 'later' : 'earlier'}`,
  'length-differs': (one, day) =>
    `The recording is ${frames(one, day)} ${one.detail.frames > 0 ? 'longer' : 'shorter'}`,
  'roll-differs': () => 'Roll differs',
  'rolling-differs': ({ is, detail }) =>
    is
      ? `${countOf(detail.takes.length, 'take')} on the card, though logged as not rolling`
      : `${countOf(detail.takes.length, 'take')} not on the card, though logged as rolling`,
  'circled-differs': ({ is }) => (is ? 'Circled on the card only' : 'Circled in the log only'),
  'take-type-differs': () => 'Kind of take differs',
  'file-name-differs': () => 'File name differs',
  'start-not-logged': () => 'No start in the log',
  'length-not-logged': () => 'No length in the log',
  'note-not-logged': () => 'A note on the card only',
  pulldown: ({ detail }) =>
    `File and log times differ by 1001/1000 (${Math.round(detail.ppm)} ppm): the files may be stamped at another rate`,
  'sample-rate-differs': (one) => `Sample rate differs${inFiles(one)}`,
  'bit-depth-differs': (one) => `Bit depth differs${inFiles(one)}`,
  'file-layout-differs': (one) => `Poly or mono differs${inFiles(one)}`,
  'timecode-rate-differs': (one) => `Timecode rate differs${inFiles(one)}`,
  'file-names-differ': ({ detail }) => `${countOf(detail.count, 'file')} named differently`,
  'clock-apart': ({ is }, day) =>
    `The phone's clock was ${framesText(is, workingHeader(day, '25').timecodeRate)} ${is > 0 ? 'behind' : 'ahead of'} the recorder at the end`,
  'clock-drifts': ({ detail }) =>
    `The phone's clock drifts ${Math.abs(detail.ppm).toFixed(1)} ppm against the recorder, ${Math.abs(detail.framesPerHour).toFixed(1)} frames an hour`,
  'pre-record-undeclared': ({ is, detail }) =>
    `The files begin ${seconds(is)} before their takes${inTakes(detail)}: a pre-record they do not declare`,
  'recordings-of-another-day': ({ detail }) => `${countOf(detail.count, 'recording')} dated another day`,
  'recordings-of-another-unit': ({ detail, is }) =>
    `${countOf(detail.count, 'recording')} of another recorder${is.length > 0 ? ` (${is.join(', ')})` : ''} match no take`,
  'field-never-changes': ({ detail, is }) =>
    detail.field === 'take'
      ? `Takes are numbered ${is} on the card, whatever the slate`
      : `The ${detail.field === 'scene' ? 'scene' : 'roll'} is ${is} in all files`,
  'recordings-overlap': ({ detail }) => `Two recordings overlap by ${seconds(detail.ms)}`,
  'recordings-gap': ({ detail }) => `${seconds(detail.ms)} are missing between two recordings of one take`,
  'parts-gap': ({ is }) => `${is} samples are missing between the parts of a split file`,
  'parts-overlap': ({ is }) => `The parts of a split file overlap by ${is} samples`,
  'file-damaged': ({ detail }) => `Damaged: ${warningWords(detail.warning)}`,
  'file-warning': ({ detail }) => warningWords(detail.warning),
  'files-disagree': ({ was }) => `The files of one recording differ in ${FIELD_WORDS[was] ?? 'something'}`,
  'file-twice': () => 'One recording is on the card twice',
};

/** What the files of one recording can differ in. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  length: 'length',
  sampleRate: 'sample rate',
  bits: 'bit depth',
  rate: 'timecode rate',
  project: 'production',
  tape: 'roll',
  scene: 'scene',
  take: 'take',
  note: 'note',
};

const inTakes = ({ takes }: { readonly takes: readonly unknown[] }): string =>
  takes.length > 1 ? ` in ${countOf(takes.length, 'take')}` : '';

/** A count of frames as hours, minutes, seconds and frames: `'00:00:12:05'`. */
const framesText = (frames: number, rate: RateId): string => formatTimecode(Math.abs(frames), rate);

export const differenceWords = (day: Day, difference: Difference): string =>
  (SENTENCES[difference.code] as (one: Difference, day: Day) => string)(difference, day) +
  onRecorder(day, difference);

/** `' (Backup)'`: whose card it is about, on a day with several recorders. */
export function onRecorder(day: Day, { recorder }: Difference): string {
  const name = recorder && recordersOf(day).find(({ id }) => id === recorder)?.name;
  return name ? ` (${name})` : '';
}
