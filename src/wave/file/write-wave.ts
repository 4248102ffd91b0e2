import type { ByteSource } from '../riff/header-reader.ts';

/** What the headers of one recording say. */
export interface WrittenWave {
  readonly name: string;
  readonly sampleRate: number;
  readonly bits: number;
  /** In samples; `start` since midnight. */
  readonly start: number;
  readonly length: number;
  /** `yyyy-mm-dd`. */
  readonly date: string;
  /** iXML elements of the take, by name: `['SCENE', '24B']`. */
  readonly said: readonly (readonly [string, string])[];
  readonly speed: readonly (readonly [string, string])[];
  readonly tracks: readonly { readonly channel: number; readonly name: string; readonly mix: boolean }[];
}

/**
 * A recording that has headers (EBU Tech 3285, iXML 3.01) and silence in place of its sound, which is nowhere: a
 * card of any size costs what its headers cost.
 */
export function writeWave(wave: WrittenWave): ByteSource {
  const { name, sampleRate, bits, length, tracks } = wave;
  const align = tracks.length * Math.ceil(bits / 8);
  const before = joined(
    chunk('bext', bext(wave)),
    chunk('fmt ', joined(u16(1, tracks.length), u32(sampleRate, sampleRate * align), u16(align, bits))),
    chunk('iXML', new TextEncoder().encode(ixml(wave))),
  );
  const sound = length * align;
  const size = 12 + before.byteLength + 8 + sound;
  const head = joined(ascii('RIFF'), u32(size - 8), ascii('WAVE'), before, ascii('data'), u32(sound));
  return {
    name,
    size,
    async read(from, to) {
      const bytes = new Uint8Array(Math.max(0, Math.min(to, size) - from));
      bytes.set(head.subarray(from, from + bytes.byteLength));
      return bytes;
    },
  };
}

function chunk(id: string, payload: Uint8Array): Uint8Array {
  const pad = new Uint8Array(payload.byteLength % 2);
  return joined(ascii(id), u32(payload.byteLength), payload, pad);
}

/** The date and the time reference; everything else is left to iXML. */
function bext({ date, start }: WrittenWave): Uint8Array {
  const payload = new Uint8Array(602);
  payload.set(ascii(date), 320);
  payload.set(u32(start % 2 ** 32, Math.floor(start / 2 ** 32)), 338);
  payload.set(u16(1), 346);
  return payload;
}

function ixml({ said, speed, tracks }: WrittenWave): string {
  const list = tracks.map(({ channel, name, mix }, at) =>
    element(
      'TRACK',
      element('CHANNEL_INDEX', String(channel)) +
        element('INTERLEAVE_INDEX', String(at + 1)) +
        element('NAME', escaped(name)) +
        (mix ? element('FUNCTION', 'MIX') : ''),
    ),
  );
  const values = (fields: WrittenWave['said']): string =>
    fields.map(([field, value]) => element(field, escaped(value))).join('');
  const inside =
    values(said) +
    element('SPEED', values(speed)) +
    element('TRACK_LIST', element('TRACK_COUNT', String(tracks.length)) + list.join(''));
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element('BWFXML', inside)}`;
}

const element = (name: string, inside: string): string => `<${name}>${inside}</${name}>`;
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

function numbers(width: 2 | 4, values: readonly number[]): Uint8Array {
  const view = new DataView(new ArrayBuffer(values.length * width));
  for (const [at, value] of values.entries()) {
    if (width === 2) view.setUint16(at * 2, value, true);
    else view.setUint32(at * 4, value, true);
  }
  return new Uint8Array(view.buffer);
}

const u16 = (...values: number[]): Uint8Array => numbers(2, values);
const u32 = (...values: number[]): Uint8Array => numbers(4, values);

function joined(...pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { byteLength }) => sum + byteLength, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.byteLength;
  }
  return whole;
}
