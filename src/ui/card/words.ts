import type { Day } from '../../day/model.ts';
import { settingsAtTake } from '../../day/settings/settings.ts';
import { takeText } from '../../day/slate.ts';
import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import type { Difference, DifferenceCode, DifferenceValue } from '../../reconcile/differences/difference.ts';
import { stemOf } from '../../reconcile/log-and-card/plain-key.ts';
import { NO_ROLL } from '../../report/rolls.ts';
import { layoutWords } from '../../report/setting-words.ts';
import { formatTimecode } from '../../time/timecode.ts';
import type { WaveWarning } from '../../wave/warning.ts';
import { countOf, listOf, partName } from '../words/chain.ts';
import { warningWords } from './wave-warnings.ts';

type Say = (difference: Difference, day: Day) => string;

const frames = ({ detail }: Difference): string => countOf(Math.abs(Number(detail.frames)), 'frame');
const seconds = (ms: unknown): string => `${(Number(ms) / 1000).toFixed(2)} s`;
const sides = ({ detail }: Difference): string => (Number(detail.frames) > 0 ? 'later' : 'earlier');
const inFiles: Say = ({ detail }) =>
  detail.count ? ` in ${countOf(Number(detail.count), 'recording')}` : '';

const SENTENCES: Record<DifferenceCode, Say> = {
  'take-not-recorded': () => 'Logged, but not on the card',
  'match-unsure': () => 'Which of these files is it?',
  'recording-not-logged': () => 'Recorded, but not logged',
  'mos-recorded': () => 'Logged as MOS, but the card has sound',
  'track-not-recorded': ({ detail, recording }) =>
    `Track ${detail.number} is not in the file${(recording?.files.length ?? 1) > 1 ? 's' : ''}`,
  'file-set-incomplete': ({ was, is }) => `Files of this recording are missing: ${is} of ${was} are there`,
  'slate-differs': () => 'Slate differs',
  'take-number-differs': () => 'Take number differs',
  'track-name-differs': ({ detail }) =>
    `Track ${detail.number} has a different name${countTakes(detail.takes)}`,
  'start-differs': (one) => `The recorder started ${frames(one)} ${sides(one)}`,
  'length-differs': (one) =>
    `The recording is ${frames(one)} ${Number(one.detail.frames) > 0 ? 'longer' : 'shorter'}`,
  'roll-differs': () => 'Roll differs',
  'circled-differs': ({ is }) => (is ? 'Circled on the card only' : 'Circled in the log only'),
  'take-type-differs': () => 'Kind of take differs',
  'file-name-differs': () => 'File name differs',
  'start-not-logged': () => 'No start in the log',
  'length-not-logged': () => 'No length in the log',
  'note-not-logged': () => 'A note on the card only',
  pulldown: ({ detail }) =>
    `File and log times differ by 1001/1000 (${Math.round(Number(detail.ppm))} ppm): the files may be stamped at another rate`,
  'sample-rate-differs': (one, day) => `Sample rate differs${inFiles(one, day)}`,
  'bit-depth-differs': (one, day) => `Bit depth differs${inFiles(one, day)}`,
  'file-layout-differs': (one, day) => `Poly or mono differs${inFiles(one, day)}`,
  'timecode-rate-differs': (one, day) => `Timecode rate differs${inFiles(one, day)}`,
  'file-names-differ': ({ detail }) => `${countOf(Number(detail.count), 'file')} named differently`,
  'clock-apart': ({ is }) =>
    `The phone's clock was ${countOf(Math.abs(Number(is)), 'frame')} ${Number(is) > 0 ? 'behind' : 'ahead of'} the recorder at the end`,
  'clock-drifts': ({ detail }) =>
    `The phone's clock drifts ${Math.abs(Number(detail.ppm)).toFixed(1)} ppm against the recorder, ${Math.abs(Number(detail.framesPerHour)).toFixed(1)} frames an hour`,
  'recordings-of-another-day': ({ detail }) =>
    `${countOf(Number(detail.count), 'recording')} dated another day`,
  'recordings-overlap': ({ detail }) => `Two recordings overlap by ${seconds(detail.ms)}`,
  'recordings-gap': ({ detail }) => `${seconds(detail.ms)} are missing between two recordings of one take`,
  'parts-gap': ({ is }) => `${is} samples are missing between the parts of a split file`,
  'parts-overlap': ({ is }) => `The parts of a split file overlap by ${is} samples`,
  'file-damaged': ({ detail }) => `Damaged: ${warningWords(detail.warning as WaveWarning)}`,
  'file-warning': ({ detail }) => warningWords(detail.warning as WaveWarning),
  'files-disagree': ({ was }) => `The files of one recording disagree in ${was}`,
  'file-twice': () => 'One recording is on the card twice',
};

const countTakes = (takes: unknown): string =>
  Array.isArray(takes) && takes.length > 1 ? ` in ${takes.length} takes` : '';

export const differenceWords = (day: Day, difference: Difference): string =>
  SENTENCES[difference.code](difference, day);

export const logWords = ({ code, was }: Pick<Difference, 'code' | 'was'>): string => sideWords(code, was);

export const cardWords = ({ code, is }: Pick<Difference, 'code' | 'is'>): string => sideWords(code, is);

function sideWords(code: DifferenceCode, value: DifferenceValue): string {
  if (code === 'roll-differs' && value === '') return NO_ROLL;
  return code === 'file-layout-differs' ? layoutWords(value === 'mono' ? 'mono' : 'poly') : valueWords(value);
}

function valueWords(value: DifferenceValue): string {
  if (value === null || value === '') return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if ('frames' in value) return formatTimecode(value.frames, value.rate);
  return listOf(value);
}

export function settlementWords(day: Day, settlement: CardSettlement): string {
  const take = (id: string): string => {
    const known = day.takes.get(id);
    return known ? takeText(known) : 'the take';
  };
  switch (settlement.kind) {
    case 'describe-takes':
      return describeWords(day, settlement.takes);
    case 'describe-day':
      return settlement.fields.filePattern === undefined
        ? 'Use the card’s setting'
        : 'Use the card’s file names';
    case 'set-recorder':
      return settlement.changes.length === 1
        ? `Use the card’s setting from ${take(settlement.changes[0]!.before)} on`
        : 'Use the card’s setting, take by take';
    case 'add-note':
      return 'Add the note';
    case 'change-roll':
      return `Roll ${settlement.roll} from ${take(settlement.before)} on`;
    case 'name-track':
      return `Name track ${partName(day.rig, settlement.track)} ${settlement.name}`;
    case 'move-changes':
      return `It changed before ${take(settlement.before)}`;
    case 'log-recording':
      return 'Log it as a take';
    case 'take-back':
      return 'Remove the take';
    case 'follow-recorder':
      return 'Sync to recorder again';
    case 'keep-log':
      return 'Keep the log';
  }
}

function describeWords(day: Day, takes: (CardSettlement & { kind: 'describe-takes' })['takes']): string {
  if (takes.length !== 1) return `Use the card for ${countOf(takes.length, 'take')}`;
  const { take, fields } = takes[0]!;
  if (fields.kind === 'mos') return 'It was MOS';
  // For mono files, it is what they have in common.
  if (fields.file)
    return `It is ${settingsAtTake(day, take).fileLayout === 'mono' ? stemOf(fields.file) : fields.file}`;
  return 'Use the card';
}
