/** The name of a typed figure. */
const FIGURES: Record<string, string> = {
  metres: 'Length in metres',
  watts: 'Power in watts',
  deviceWatts: 'Power of the device in watts',
  wattHours: 'Watt-hours',
  batteryWattHours: 'Watt-hours of the battery',
  volts: 'Voltage',
  deviceMinVolts: 'Minimum voltage of the device',
  amps: 'Current in amperes',
  celsius: 'Temperature in °C',
  connectorOhms: 'Resistance of the connectors in ohms',
  powerClass: 'Power class',
  awg: 'Wire gauge',
  channels: 'Channels',
  channelsAStream: 'Channels per stream',
  samplesAPacket: 'Samples per packet',
  samplesPerPacket: 'Samples per packet',
  sampleRate: 'Sample rate',
  linkMbps: 'Speed of the link in Mbit/s',
  runtimeHours: 'Battery life in hours',
  ppm: 'Tolerance in ppm',
  bytes: 'Size of the card',
  capacityBytes: 'Size of the card',
  usedBytes: 'What is on the card',
  recordedMs: 'Recorded time',
  tracks: 'Tracks',
  copies: 'Copies',
  files: 'Files',
  minutesAgo: 'Minutes ago',
  callAtMs: 'The call',
  khz: 'The frequency',
};

export const figure = (field: unknown): string => FIGURES[String(field)] ?? String(field);

const LEAST = 0.001;
/** A figure in plain digits: no exponent on a screen. */
export const plain = (value: unknown): string => {
  const number = Number(value);
  return Math.abs(number) >= LEAST || number === 0
    ? number.toLocaleString('en-GB', { maximumFractionDigits: 3 })
    : 'almost 0';
};

const BYTES = new Set(['bytes', 'usedBytes', 'capacityBytes']);
export const limit = (field: unknown, value: unknown): string =>
  BYTES.has(String(field)) ? `${plain(Number(value) / 1e9)} GB` : plain(value);
