import { formatMhz } from '../../facts/frequency.ts';
import type { Problem } from '../../shared/result.ts';

type Say = (problem: Problem) => string;

const quoted = (value: unknown): string => `“${String(value).slice(0, 60)}”`;
const mhz = (khz: unknown): string => `${formatMhz(Number(khz))} MHz`;

/** What a typed figure is called. */
const FIGURES: Record<string, string> = {
  metres: 'Length in metres',
  watts: 'Power in watts',
  deviceWatts: 'Power of the device in watts',
  wattHours: 'Watt-hours',
  batteryWattHours: 'Watt-hours of the battery',
  volts: 'Volts',
  deviceMinVolts: 'Least volts of the device',
  amps: 'Amperes',
  celsius: 'Temperature in °C',
  connectorOhms: 'Ohms of the connectors',
  powerClass: 'Power class',
  awg: 'Gauge',
  channels: 'Channels',
  channelsAStream: 'Channels in a stream',
  samplesAPacket: 'Samples in a packet',
  samplesPerPacket: 'Samples in a packet',
  sampleRate: 'Sample rate',
  linkMbps: 'Speed of the link in Mbit/s',
  runtimeHours: 'Runtime in hours',
  ppm: 'Tolerance in ppm',
  bytes: 'Size of the card',
  capacityBytes: 'Size of the card',
  usedBytes: 'What is on the card',
  recordedMs: 'Recorded time',
  tracks: 'Tracks',
  copies: 'Copies',
  minutesAgo: 'Minutes ago',
  callAtMs: 'The call',
  khz: 'The frequency',
};

const figure = (field: unknown): string => FIGURES[String(field)] ?? String(field);

const LEAST = 0.001;
/** A figure in plain digits: no exponent on a screen. */
const plain = (value: unknown): string => {
  const number = Number(value);
  return Math.abs(number) >= LEAST || number === 0
    ? number.toLocaleString('en-GB', { maximumFractionDigits: 3 })
    : 'almost 0';
};

const BYTES = new Set(['bytes', 'usedBytes', 'capacityBytes']);
const limit = (field: unknown, value: unknown): string =>
  BYTES.has(String(field)) ? `${plain(Number(value) / 1e9)} GB` : plain(value);

/** Sentences for what can be wrong with radio, power, media and cables. */
export const PREP_SENTENCES: Readonly<Record<string, Say>> = {
  'quantity-not-finite': ({ field }) => `${figure(field)}: that is not a number.`,
  'quantity-out-of-range': ({ field, value, min, max }) =>
    `${figure(field)}: ${limit(field, value)} cannot be. Between ${limit(field, min)} and ${limit(field, max)}, please.`,
  'quantity-not-whole': ({ field }) => `${figure(field)}: a whole number, please.`,
  'number-unread': ({ field, typed }) => `${figure(field)}: ${quoted(typed)} is not a number.`,
  'nothing-chosen': () => 'Nothing is chosen.',
  'name-too-long': ({ longest }) => `That name is too long; ${longest} characters is the most.`,

  'frequency-empty': () => 'Type a frequency in MHz, as 606.250.',
  'frequency-unreadable': ({ text }) => `${quoted(text)} is not a frequency. Type MHz, as 606.250.`,
  'frequency-finer-than-khz': ({ text }) => `${quoted(text)} is finer than a kHz.`,
  'frequency-not-whole': () => 'A frequency is a whole number of kHz.',
  'frequency-not-positive': () => 'A frequency is above 0 MHz.',
  'frequency-too-low': ({ khz, lowestKhz }) =>
    `${mhz(khz)} is below ${mhz(lowestKhz)}. Type MHz, as 606.250.`,
  'frequency-too-high': ({ khz, highestKhz }) =>
    `${mhz(khz)} is above ${mhz(highestKhz)}. Were kHz typed? Type MHz, as 606.250.`,
  'frequency-outside-ranges': ({ khz }) => `${mhz(khz)} is outside where these packs tune.`,
  'frequency-off-raster': ({ khz }) => `${mhz(khz)} is off the raster of these packs.`,
  'frequency-taken': ({ khz }) => `${mhz(khz)} is taken already.`,
  'carrier-named-twice': () => 'Two carriers have one name inside. Take one of them out.',
  'carrier-unknown': () => 'That carrier is not in the plan.',
  'carriers-too-many': ({ count, most }) =>
    `${count} carriers are more than can be worked out at once; ${most} is the most. Switch some off.`,
  'guard-unusable': ({ mostKhz }) => `A distance is whole kHz from 0 to ${plain(mostKhz)}.`,
  'spacing-unusable': ({ mostKhz }) => `A spacing is whole kHz from 0 to ${plain(mostKhz)}.`,
  'range-upside-down': ({ fromKhz, toKhz }) => `From ${mhz(fromKhz)} to ${mhz(toKhz)} runs downwards.`,
  'range-too-wide': ({ mostKhz }) => `A stretch is at most ${plain(Number(mostKhz) / 1000)} MHz wide.`,
  'raster-unusable': () => 'A raster is a whole number of kHz, 1 or more.',
  'ranges-missing': () => 'Say where these packs can be tuned first.',
  'band-without-ends': () => 'A stretch needs both ends in MHz.',
  'count-unusable': ({ most }) => `Between 1 and ${most} packs at once, please.`,
  'no-clean-set': ({ count, proven }) =>
    proven
      ? `There is no clean set of ${count} in these ranges with these guards.`
      : `No clean set of ${count} was found in the time given. Widen the ranges or lower a guard.`,
  'tv-channel-unknown': ({ channel }) => `There is no TV channel ${channel} on this raster.`,
  'pages-not-made': () =>
    'The pages could not be made. Open the app once with a signal, and look here again.',
  'search-failed': () => 'The search could not run on this phone. Type frequencies; hits are still shown.',

  'clock-time-unread': ({ typed }) =>
    `${quoted(typed)} is not a time of day. Type hours and minutes, as 13:30.`,
  'jam-from-itself': () => 'A device cannot be jammed from itself.',
  'jam-after-now': () => 'Jammed later than now: the clocks of two phones differ.',
  'no-runtime': () => 'Nobody has said how long a set of cells runs in it.',
  'no-tolerance': () => 'Nobody has said the tolerance of its clock, so its drift is not known.',
  'source-without-tolerance': () =>
    'Nobody has said the tolerance of a clock its timecode came from, so its drift is not known.',
  'card-without-size': () => 'Say how large the card is.',
  'card-over-full': () => 'More is on the card than fits on it.',
  'run-without-type': () => 'Say what kind of run it is.',
  'no-such-class': ({ class: id }) => `There is no power class ${id}.`,
  'unknown-gauge': ({ awg }) => `AWG ${awg} is not in the wire table: 10 to 22, even numbers.`,
  'load-beyond-lead': ({ mostWatts }) =>
    `This lead cannot carry that load at all; ${plain(mostWatts)} W is the most.`,
  'device-below-minimum': ({ volts, deviceMinVolts }) =>
    `It needs ${plain(deviceMinVolts)} V and gets ${plain(volts)} V: it may not run at all.`,
  'current-beyond-lead': ({ mostAmps }) =>
    `This lead cannot carry that current at all; ${plain(mostAmps)} A is the most.`,
  'packet-too-large': ({ mostChannels }) =>
    `So many channels do not fit one packet; ${mostChannels} is the most with this packet time.`,
  'no-cord-rating': ({ awg }) => `No cord rating is known for AWG ${awg}.`,
  'snake-too-short': ({ count, first }) =>
    `${count} leads from circuit ${first} on are more than a snake of eight has.`,
  'no-such-circuit': ({ circuit }) => `A snake has circuits 1 to 8, not ${circuit}.`,
  'circuit-used-twice': ({ snake, circuit, leads }) =>
    `Circuit ${circuit} of snake ${snake} is used by leads ${(leads as string[]).join(' and ')}.`,
  'input-reached-twice': ({ input, leads }) =>
    `${input} is reached by leads ${(leads as string[]).join(' and ')} without a selector between.`,
  'different-sources': () => 'They were jammed from different devices, so they cannot be compared.',
  'not-user-bits': ({ text }) => `${quoted(text)} are no user bits: eight digits, 0 to 9 and A to F.`,
  'not-a-zone-code': ({ zoneCode }) => `${quoted(zoneCode)} is no zone code: two digits, 0 to 9 and A to F.`,
  'not-a-date': () => 'The day has no date yet.',
};
