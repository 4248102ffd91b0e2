import { describe, expect, test } from 'vitest';
import { loadSample } from '../../sample-days/load.ts';
import type { Day } from '../../src/day/model.ts';
import type { Matter } from '../../src/report/matter.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import type { Status, TakeLine } from '../../src/report/take-lines.ts';
import type { TrackLine } from '../../src/report/track-lines.ts';
import { evened, readExpected } from './expected.ts';

// The words of the expectations, which are not those of the printed report: what is compared is the model.
const MARKS: Record<Status, string> = {
  'no-good': 'NG',
  'false-start': 'false start',
  pickup: 'pickup',
  wild: 'wild track',
  tone: 'room tone',
  mos: 'MOS',
  'tail-slate': 'tail slate',
  'main-unit': 'main unit',
  'second-unit': 'second unit',
  'splinter-unit': 'splinter unit',
  rolling: 'rolling',
  'no-start': 'no start',
  'no-length': 'no length',
  'file-missing': 'file missing',
};

function trackText({ number, name, state, voices }: TrackLine): string {
  const muted = voices.filter((voice) => voice.muted).map((voice) => voice.name);
  const marks = {
    mix: '',
    empty: ' (nobody)',
    single: muted.length > 0 ? ` (${muted.join(', ')} muted)` : '',
    gang: ' (ganged)',
    clash: ' (clash)',
    muted: ' (muted)',
  };
  return `${number} ${name}${marks[state]}`;
}

/** UTC ms as the phone showed them, `'17:42:10.240'`. */
const shown = (ms: number, zone: number): string =>
  new Date(ms + zone * 60_000).toISOString().slice('2026-11-19T'.length, -1);

function takeText(day: Day, line: TakeLine): string {
  const { rolledAt, cutAt } = day.takes.get(line.takeId)!;
  const zone = day.facts[0]!.zone;
  const wall =
    rolledAt === undefined || cutAt === undefined ? '-' : `${shown(rolledAt, zone)} to ${shown(cutAt, zone)}`;
  const marks = [...(line.circled ? ['circled'] : []), ...line.status.map((status) => MARKS[status])];
  const cells = [line.text, line.file, line.roll, wall, line.start, line.length, marks.join(', ')];
  const notes = line.notes.map(
    ({ number, text }) => `${number === null ? 'take' : `track ${number}`}: ${text}`,
  );
  const [main, ...also] = line.recorders;
  const on = [
    ...(main && main.name !== 'Cart' ? [`on ${main.name}`] : []),
    ...also.map(({ name, roll, file }) => `also on ${name}, roll ${roll}: ${file}`),
  ];
  return [evened(cells.join(' | ')), ...line.tracks.map(trackText), ...on, ...notes].join('\n');
}

const headText = ({ head }: ReportModel): string =>
  `${head.production}, ${head.label}, ${head.date}; rolls ${head.rolls.join(', ')}`;

function totalsText({ takes, totals }: ReportModel): string {
  const longest = takes.find(({ takeId }) => takeId === totals.longest?.take.id)?.text;
  const seconds = (totals.recordedMs / 1000).toFixed(3);
  return `${totals.takes} takes, ${totals.circled} circled, ${totals.files} files, ${seconds} s, ${totals.bytes} bytes; longest ${longest}`;
}

const openText = (open: readonly Matter[]): string =>
  open
    .map(
      ({ code, number, name, names }) =>
        `${code}, ${number ? `track ${number}` : name}: ${names?.join(', ')}`,
    )
    .join('; ') || 'nothing';

describe.each(['small', 'full'] as const)('the report of the %s sample day', (name) => {
  const day = loadSample(name);
  const model = reportOf(day);
  const expected = readExpected(name);

  test('says of every take what was worked out by hand', () => {
    expect(model.takes.map((take) => takeText(day, take))).toEqual(expected.takes);
  });

  test('has the head, the totals and the open matters that were worked out by hand', () => {
    expect(headText(model)).toBe(expected.head);
    expect(totalsText(model)).toBe(expected.totals);
    expect(openText(model.open)).toBe(expected.open);
  });
});
