import { SECOND_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import type { ReportHead } from '../model.ts';
import type { OnRecorder } from '../on-recorders.ts';
import type { RecorderRun } from '../recorders.ts';
import { recordersText } from '../recorders-text.ts';
import { NO_ROLL } from '../rolls.ts';
import { type PrintedSetting, runsText } from '../setting-runs.ts';
import { counted } from './figures.ts';
import { namesText } from './names-text.ts';

/** `'Cart'`, `'Backup (roll B1)'`. The roll of the main one of a take's recorders is the take's own. */
export const onRecorderWords = ({ name, roll }: OnRecorder, at: number): string =>
  at > 0 && roll ? `${name} (roll ${roll})` : name;

/** Every recorder with the takes it has; a day with one recorder only names it. */
export function recorderLines({
  form,
  recorder,
  recorders,
}: ReportHead): (readonly [label: string, text: string])[] {
  if (recorders.length === 0) return [['Recorder', recorder]];
  const textOf = form > SECOND_FORM ? runText : secondFormText;
  return recorders.map((run, at) => [at === 0 ? 'Recorder' : `Recorder ${at + 1}`, textOf(run)] as const);
}

/** More takes that a recorder does not have are not named: the ones it has are, by the first and last in a row. */
const MOST_WITHOUT = 4;

/** `'Cart, roll 7A, all 14 takes'`, `'Bag, roll B1 (24A/1 to 24A/3), roll B2 (24B/1), 4 of 14 takes: 24A/1 to 24B/1'`. */
function runText(run: RecorderRun): string {
  const { name, has, of, without, runs } = run;
  if (of === 0) return name;
  if (has === 0) return `${isolated(name)}, no take`;
  const named = [isolated(name), ...rollsOf(run)].join(', ');
  if (without.length === 0) return `${named}, all ${counted(of, 'take')}`;
  const some = `${named}, ${has} of ${counted(of, 'take')}`;
  return without.length <= MOST_WITHOUT
    ? `${some}, not ${namesText(without)}`
    : `${some}: ${namesText(runs.map(fromTo))}`;
}

function rollsOf({ rolls, rollRuns }: RecorderRun): string[] {
  const words = (roll: string): string => (roll ? `roll ${isolated(roll)}` : NO_ROLL);
  if (rolls.length === 0) return [];
  if (rollRuns.length === 1) return [words(rolls[0]!)];
  return rollRuns.map((run) => `${words(run.text)} (${fromTo(run)})`);
}

const fromTo = ({ from, to }: { readonly from: string; readonly to: string }): string =>
  from === to ? from : `${from} to ${to}`;

/** As the second form had it: rolls without their takes. */
function secondFormText({ name, rolls, has, of, without }: RecorderRun): string {
  if (of === 0) return name;
  const named = [isolated(name), ...rolls.map((roll) => `roll ${isolated(roll)}`)].join(', ');
  if (without.length === 0) return `${named}, all ${counted(of, 'take')}`;
  if (has === 0) return `${named}, no take`;
  return `${named}, ${has} of ${counted(of, 'take')}, not ${namesText(without)}`;
}

/** A setting along the day; of each recorder by itself where they were not set alike, a line each. */
export const settingText = (head: ReportHead, field: PrintedSetting): string =>
  isApart(head, field) ? eachText(head, field).join('\n') : runsText(head.set[field]);

const isApart = ({ apart }: ReportHead, field: PrintedSetting): boolean => apart.includes(field);

const eachText = ({ recorders }: ReportHead, field: PrintedSetting): string[] =>
  recorders.filter(({ has }) => has > 0).map(({ name, set }) => `${isolated(name)}: ${runsText(set[field])}`);

/** Recorders whose files have the same names, and what tells them apart. */
export const alikeText = ({ alike }: ReportHead): string =>
  alike
    .map(
      ({ recorders, areRollsApart }) =>
        `the same on ${recordersText(recorders)}, told apart by ${areRollsApart ? 'the roll' : 'the recorder only'}`,
    )
    .join('; ');

const RATES = [
  { field: 'timecodeRate', what: 'timecode rate' },
  { field: 'sampleRate', what: 'sample rate' },
] as const;

/** What editors must be told first: another recorder, or rates, that are not the same all day. */
export function cautionLines(head: ReportHead): string[] {
  const { main } = head;
  return [
    ...(main.length > 1 ? [`The recorder changes during the day: ${runsText(main)}.`] : []),
    ...RATES.flatMap(({ field, what }) => {
      if (isApart(head, field))
        return [`The ${what} is not the same on all recorders. ${eachText(head, field).join('. ')}.`];
      const runs = head.set[field];
      return runs.length > 1 ? [`The ${what} changes during the day: ${runsText(runs)}.`] : [];
    }),
  ];
}

/** What another recorder has of a take: `'Backup, roll B1: 24T1.wav'`, `'Bag: B1-002.wav, 24 fps'`. */
export function alsoText({ name, roll, files, file, otherwise }: OnRecorder): string {
  const count = files.length > 1 ? `${counted(files.length, 'file')} ` : '';
  const has = [file ? count + isolated(file) : 'no file', ...otherwise].join(', ');
  return `${[isolated(name), ...(roll ? [`roll ${isolated(roll)}`] : [])].join(', ')}: ${has}`;
}
