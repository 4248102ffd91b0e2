import type { MicRun } from '../../day/answers/mic-runs.ts';
import type {
  ComparedLine,
  HeadFacts,
  JamLine,
  ListenerLine,
  MicLine,
  Moment,
  TrackTap,
} from '../head-facts.ts';
import { isolated } from '../isolated.ts';
import type { ReportHead } from '../model.ts';
import { namesText } from './names-text.ts';

/** `'main unit: 24A/1 to 24B/3, 25/1'`, a line each. */
export const unitsText = ({ units }: HeadFacts): string =>
  units
    .map(({ unit, takes }) => {
      const runs = takes.map(({ from, to }) =>
        from === to ? isolated(from) : `${isolated(from)} to ${isolated(to)}`,
      );
      return `${unit} unit: ${runs.join(', ')}`;
    })
    .join('\n');

/** `'N. Aske, +44 20 7946 0000'`. */
export const crewText = (name: string, contact: string): string =>
  [name, contact].filter(Boolean).map(isolated).join(', ');

/** `'−20 dBFS, 1 kHz, on roll 7A'`. */
export const toneText = ({ tone, toneRoll }: Pick<ReportHead, 'tone' | 'toneRoll'>): string =>
  [tone && isolated(tone), toneRoll && `on roll ${isolated(toneRoll)}`].filter(Boolean).join(', ');

const FADER = { pre: 'pre fader', post: 'post fader' } as const;

/** `'mix post fader, isos pre fader'`; of recorders that differ a line each. Tracks are named where they are not alike. */
export function tapsText({ taps }: Pick<HeadFacts, 'taps'>): string {
  const lines = taps
    .map(({ recorder, mixes, isos }) => {
      const text = [...groupText('mix', mixes), ...groupText('isos', isos)].join(', ');
      return { recorder, text };
    })
    .filter(({ text }) => text !== '');
  const [first] = lines;
  if (!first || lines.every(({ text }) => text === first.text)) return first?.text ?? '';
  return lines.map(({ recorder, text }) => `${isolated(recorder)}: ${text}`).join('\n');
}

function groupText(group: string, tracks: readonly TrackTap[]): string[] {
  const [first] = tracks;
  if (first?.tap && tracks.every(({ tap }) => tap === first.tap)) return [`${group} ${FADER[first.tap]}`];
  return (['post', 'pre'] as const).flatMap((tap) => {
    const names = tracks.filter((one) => one.tap === tap).map(({ name }) => name);
    return names.length > 0
      ? [`${names.length === 1 ? 'track' : 'tracks'} ${runsText(names)} ${FADER[tap]}`]
      : [];
  });
}

const runsText = (names: readonly string[]): string =>
  runsIn(names)
    .map(([from, to]) => (from === to ? isolated(from) : `${from} to ${to}`))
    .join(', ');

/** `['2', '3', '4', 'Mix']` as `[['2', '4'], ['Mix', 'Mix']]`. */
function runsIn(names: readonly string[]): (readonly [string, string])[] {
  const runs: [string, string][] = [];
  for (const name of names) {
    const last = runs.at(-1);
    if (last && /^\d+$/.test(name) && Number(last[1]) === Number(name) - 1) last[1] = name;
    else runs.push([name, name]);
  }
  return runs;
}

/** Where the start times come from, what was jammed from what, and what was compared with what, a line each. */
export const timecodeSourceText = ({ synced, jams, compared }: HeadFacts): string =>
  [
    ...(synced.length > 0
      ? [`start times from the phone, synced to the recorder at ${timesText(synced)}`]
      : []),
    ...jams.map(jamText),
    ...compared.map(comparedText),
  ].join('\n');

const jamText = ({ device, from, at }: JamLine): string =>
  `${isolated(device)} jammed from ${isolated(from)} at ${timesText(at)}`;

/** `'Slate 1 compared with Cart: 0.12 frames ahead ± 0.04 at 13:05, in step ± 0.04 at 15:10'`. */
const comparedText = ({ device, with: other, at }: ComparedLine): string =>
  `${isolated(device)} compared with ${isolated(other)}: ${at.map((one) => `${apartText(one)} at ${timeOf(one)}`).join(', ')}`;

function apartText({ frames, doubtFrames }: ComparedLine['at'][number]): string {
  const size = Math.abs(frames).toFixed(2);
  const side = size === '0.00' ? 'in step' : `${size} frames ${frames < 0 ? 'behind' : 'ahead'}`;
  return `${side} ± ${doubtFrames.toFixed(2)}`;
}

const timesText = (at: readonly Moment[]): string => namesText([...new Set(at.map(timeOf))]);

const timeOf = ({ atMs, zone }: Moment): string => new Date(atMs + zone * 60_000).toISOString().slice(11, 16);

/** `'Ines (M. Varga): black omni lavalier, tie; from 24B/2 hair'`, a line each. */
export const micsText = ({ mics }: HeadFacts): string => mics.map(micText).join('\n');

function micText({ name, person, place, mics }: MicLine): string {
  const who = person ? `${isolated(name)} (${isolated(person)})` : isolated(name);
  return `${who}: ${[place && isolated(place), mics.map(runText).join('; ')].filter(Boolean).join(', ')}`;
}

function runText({ pack, listed, rubs, carried, from }: MicRun): string {
  const said = [...listed.map(isolated), rubs && `rubs on ${isolated(rubs)}`, carried && 'as the day before'];
  const words = said.filter(Boolean).join(', ') || 'not entered';
  return [from && `from ${from}`, pack && `on ${isolated(pack)}`, words].filter(Boolean).join(' ');
}

/** `'Director: IFB 1, channel 3, hears Mix, receiver not returned'`, a line each. */
export const listenersText = ({ listeners }: HeadFacts): string => listeners.map(listenerText).join('\n');

function listenerText({ name, receiver, channel, hears, isOut }: ListenerLine): string {
  const said = [
    receiver && isolated(receiver),
    channel && `channel ${isolated(channel)}`,
    hears && `hears ${isolated(hears)}`,
    isOut && 'receiver not returned',
  ];
  return [isolated(name), said.filter(Boolean).join(', ')].filter(Boolean).join(': ');
}
