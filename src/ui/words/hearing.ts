import type { EarState } from '../../app/ear/ear.ts';
import type { Heard } from '../../ltc/measure/listening.ts';
import type { RateHeard } from '../../ltc/measure/rate-heard.ts';
import type { HearingCode, HearingProblem, HearingProblemOf } from '../../shared/hearing-problem.ts';
import type { Label } from '../../time/label.ts';
import { formatSeconds } from '../../time/length.ts';
import type { RateId } from '../../time/rate.ts';
import { type UserBitsReading, userBitsReadings } from '../../upkeep/due/user-bits.ts';
import { countOf } from './chain.ts';

/** Any rate that is counted, not only those that a day can be set to. */
const heardAs = (rate: RateId): string =>
  rate.endsWith('DF') ? `${rate.slice(0, -2)} fps drop-frame` : `${rate} fps`;

/** A sentence for each way in which listening can fail. */
const SENTENCES: { readonly [Code in HearingCode]: (problem: HearingProblemOf<Code>) => string } = {
  'microphone-refused': () =>
    'The microphone is not allowed. Allow it for this app in the settings of the phone or the browser, then try again.',
  'microphone-missing': () => 'No microphone was found. Plug one in, then try again.',
  'microphone-busy': () => 'Another app is using the microphone. Close it, or end the call, then try again.',
  'microphone-lost': () => 'The microphone was unplugged, or another app took it. Listening has stopped.',
  'microphone-not-here': () => 'This browser cannot listen. Sync with a tap instead.',
  'listening-stopped': () => 'Listening stopped while the app was out of sight.',
  'listening-failed': ({ name }) => `Listening did not start (${name}). Try again, or sync with a tap.`,
  'heard-too-short': () => 'Two seconds of timecode without a break are needed.',
  'heard-backwards': () => 'The timecode runs backwards. Play it forwards at its own speed.',
  'heard-standing': () => 'The timecode stands still. Start it running.',
  'heard-rate-unclear': () => 'The rate is not certain yet.',
  'heard-rates-differ': ({ rates: [one, other] }) =>
    `One runs at ${one}, the other at ${other}, so they drift apart by the second. Set the rate first, then compare.`,
  'heard-too-soon': () => 'Both were heard at the same moment. Compare again later.',
};

export const hearingSentence = (problem: HearingProblem): string =>
  (SENTENCES[problem.code] as (problem: HearingProblem) => string)(problem);

const two = (value: number): string => String(value).padStart(2, '0');

/** The digits as they were heard, at whatever rate. */
export const labelWords = ({ hours, minutes, seconds, frames }: Label, isDrop: boolean): string =>
  `${two(hours)}:${two(minutes)}:${two(seconds)}${isDrop ? ';' : ':'}${two(frames)}`;

const SILENT_DB = -62;
const FAINT_DB = -40;
const LOUD_DB = -0.5;

export const levelWords = (peakDb: number): string => {
  if (!(peakDb > SILENT_DB)) return 'silent';
  const figure = `${Math.round(peakDb)} dB`.replace('-', '−');
  if (peakDb > LOUD_DB) return `${figure}, clipping: turn it down or add a pad`;
  return peakDb < FAINT_DB ? `${figure}, faint` : figure;
};

export const framesRead = ({ good, bad }: Pick<EarState, 'good' | 'bad'>): string =>
  `${countOf(good, 'frame')} read, ${bad} lost`;

/** The rate, or as much of it as is known. */
export function heardRateWords(rate: RateHeard | undefined): string {
  if (!rate) return 'measuring';
  const measured = `${rate.fps.toFixed(3)} fps ± ${Math.ceil(rate.ppm)} ppm`;
  if (rate.rate) return `${heardAs(rate.rate)} (measured ${measured})`;
  return rate.trouble ? measured : `${measured}; not told apart yet`;
}

export interface HeardBeside {
  /** The day's rate, if this version knows it. */
  readonly rate: RateId | null;
  /** The day's date, `2026-10-07`; empty if it has none. */
  readonly date: string;
  /** Today by the phone, in the same form: nights run past midnight. */
  readonly today: string;
}

/** Everything that is wrong with the timecode heard, worst first, each to be said at once. */
export function heardTroubles(heard: Heard, beside: HeardBeside): string[] {
  const { rate, runs, jump, last } = heard;
  return [
    ...(runs === 'backwards' ? [SENTENCES['heard-backwards']({ code: 'heard-backwards' })] : []),
    ...(runs === 'stands' ? [SENTENCES['heard-standing']({ code: 'heard-standing' })] : []),
    ...(rate ? rateTroubles(rate, beside.rate, last.dropFlag) : []),
    ...(jump ? [jumpWords(jump.byFrames, rate?.fps ?? 25)] : []),
    ...dateTroubles(last.userBits, beside),
  ];
}

function rateTroubles({ rate, trouble, fps }: RateHeard, daysRate: RateId | null, flag: boolean): string[] {
  const said: string[] = [];
  if (trouble === 'no-such-speed')
    said.push(`Runs at ${fps.toFixed(2)} frames a second, which is no rate in use.`);
  if (trouble === 'counts-another') said.push(`Runs at ${rate} and counts frames of another rate.`);
  if (trouble === 'flag-and-count-differ') {
    said.push(
      flag
        ? 'Marked as drop-frame, but no numbers are left out at the minute.'
        : 'Numbers are left out at the minute, but it is not marked as drop-frame.',
    );
  }
  if (rate && daysRate && rate !== daysRate)
    said.push(`Runs at ${heardAs(rate)}. The day is at ${heardAs(daysRate)}.`);
  return said;
}

/** More are said as a time. */
const MOST_FRAMES = 99;

function jumpWords(byFrames: number, fps: number): string {
  const size = Math.abs(byFrames);
  const words = size > MOST_FRAMES ? formatSeconds(Math.round(size / fps)) : countOf(size, 'frame');
  return `The timecode jumped ${byFrames < 0 ? 'back' : 'ahead'} by ${words}.`;
}

function dateTroubles(userBits: string | null, { date, today }: HeardBeside): string[] {
  const readings = userBits ? userBitsReadings(userBits) : undefined;
  const [first] = readings?.ok ? readings.value : [];
  if (!first || !readings?.ok || date === '') return [];
  const isKnown = readings.value.some((one) => [date, nextDay(date), today].includes(dateOf(one)));
  return isKnown ? [] : [`User bits say ${dateOf(first)}. The day is ${date}.`];
}

const dateOf = ({ year, month, day }: UserBitsReading): string => `${2000 + year}-${two(month)}-${two(day)}`;

const nextDay = (date: string): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/** `20 26 11 28` */
export const spacedBits = (bits: string): string => bits.replace(/(..)(?=.)/g, '$1 ');

/** Milliseconds as read on a screen: `0.4 ms`, `38 ms`. */
export const msWords = (ms: number): string =>
  `${Math.abs(ms) < 10 ? ms.toFixed(1) : Math.round(ms)} ms`.replace('-', '−');
