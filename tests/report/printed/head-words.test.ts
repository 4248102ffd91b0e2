import { describe, expect, test } from 'vitest';
import type { HeaderFields } from '../../../src/facts/kinds/day-described.ts';
import { reportHtml } from '../../../src/report/formats/html.ts';
import { reportOf } from '../../../src/report/model.ts';
import { headLines } from '../../../src/report/printed/words.ts';
import { smallDay } from '../report-day.ts';

type Phone = ReturnType<typeof smallDay>['phone'];

/** A line of the head of the small day, after something more was said. */
function line(label: string, say: (phone: Phone) => void, form?: number): string | undefined {
  const { phone } = smallDay();
  say(phone);
  return headLines(reportOf(phone.day(), [], form).head).find(([one]) => one === label)?.[1];
}
const described = (fields: HeaderFields) => (phone: Phone) =>
  void phone.say({ kind: 'day-described', fields });
const track = (part: string, fields: object) => ({ kind: 'part-described', part, fields }) as const;

describe('the head of the report', () => {
  test('says how to reach the crew, and of a name that is missing only that', () => {
    expect(line('Mixer', described({ mixerContact: '+44 20 7946 0000' }))).toBe('N. Aske, +44 20 7946 0000');
    expect(line('Boom', described({ boomContact: 'iva@example.org' }))).toBe('Iva Brandt, iva@example.org');
    expect(line('Utility', described({ utilityContact: 'channel 3' }))).toBe('channel 3');
    expect(line('Utility', described({}))).toBeUndefined();
  });

  test('says the level of the reference tone and its roll', () => {
    const tone = '-20 dBFS, 1 kHz';
    expect(line('Reference tone', described({ tone, toneRoll: '7A' }))).toBe(`${tone}, on roll 7A`);
    expect(line('Reference tone', described({ tone }))).toBe(tone);
    expect(line('Reference tone', described({ toneRoll: '7A' }))).toBe('on roll 7A');
  });

  test('says which tracks are before and after the faders, by number where they are not alike', () => {
    const tap = (track_: string, to: string) => track(track_, { tap: to });
    expect(line('Faders', () => {})).toBe('mix post fader');
    const isos = (to: string) => (phone: Phone) =>
      void phone.say(...['tr2', 'tr3', 'tr4', 'tr5'].map((one) => tap(one, to) as never));
    expect(line('Faders', isos('pre'))).toBe('mix post fader, isos pre fader');
    expect(
      line('Faders', (phone) => {
        isos('pre')(phone);
        phone.say(tap('tr4', 'post') as never, tap('tr1', 'a newer word') as never);
      }),
    ).toBe('track 4 post fader, tracks 2 to 3, 5 pre fader');
  });

  test('says where start times come from and what was jammed from what, at which times', () => {
    const said = line('Timecode source', (phone) => {
      const atMs = Date.UTC(2026, 9, 7, 6, 30);
      phone.say({ kind: 'devices-described', devices: ['slate'], fields: { name: 'Slate 1' } });
      phone.say({ kind: 'clock-followed', frames: 900_000, rate: '25', atMs });
      phone.say({ kind: 'devices-jammed', devices: ['slate'], from: 'recorder', atMs });
      phone.say({ kind: 'devices-jammed', devices: ['slate'], from: 'recorder', atMs: atMs + 3_600_000 });
      const [wrong] = phone.say({ kind: 'devices-jammed', devices: ['slate'], from: 'recorder', atMs: 0 });
      phone.say({ kind: 'fact-retracted', targets: [wrong!.id], by: 'undo' });
    });
    expect(said).toBe(
      'start times from the phone, synced to the recorder at 08:30\nSlate 1 jammed from 8-track bag recorder at 08:30, 09:30',
    );
    expect(line('Timecode source', () => {})).toBeUndefined();
  });

  test('says by itself what was compared by ear, each time, but what was taken back', () => {
    const at = Date.UTC(2026, 9, 7, 11, 5);
    const compare = (phone: Phone, atMs: number, offMs: number) => {
      const said = { device: 'slate', from: 'recorder', atMs, offMs, doubtMs: 1.6 };
      return phone.say({ kind: 'timecode-compared', ...said });
    };
    const said = line('Timecode source', (phone) => {
      phone.say({ kind: 'devices-described', devices: ['slate'], fields: { name: 'Slate 1' } });
      compare(phone, at, 290);
      const [wrong] = compare(phone, at + 60_000, 1000);
      phone.say({ kind: 'fact-retracted', targets: [wrong!.id], by: 'undo' });
      compare(phone, at + 3_600_000, -4.8);
      compare(phone, at + 7_200_000, 0.1);
    });
    // At 25 fps a frame is 40 ms.
    expect(said).toBe(
      'Slate 1 compared with 8-track bag recorder: 7.25 frames ahead ± 0.04 at 13:05, 0.12 frames behind ± 0.04 at 14:05, in step ± 0.04 at 15:05',
    );
  });

  test('says where mics were and which, with the performer beside the part', () => {
    const said = line('Mics', (phone) => {
      const fields = { person: 'M. Varga', place: 'tie' };
      phone.say({ kind: 'voice-described', voice: 'ines', fields });
      phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'ines', mic: 'omni lavalier' });
      phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora', mic: 'cardioid' });
      phone.say({ kind: 'voice-described', voice: 'tomas', fields: { person: 'A. Reis' } });
    });
    expect(said).toBe('Ines (M. Varga): tie, omni lavalier\nDora: cardioid');
  });

  test('says who heard what on which receiver, and who has it yet; nothing in the first two forms', () => {
    const say = (phone: Phone): void => {
      const fields = { name: 'Director', receiver: 'IFB 1', channel: '3', part: 'tr1', handedOut: true };
      phone.say({ kind: 'listener-described', listener: 'd', fields });
      const back = { name: 'Client', receiver: 'IFB 2', hears: 'mix', handedOut: false };
      phone.say({ kind: 'listener-described', listener: 'c', fields: back });
      phone.say({ kind: 'listener-described', listener: 'v', fields: { name: 'Video village' } });
      phone.say({ kind: 'listener-described', listener: 'x', fields: { name: 'Nobody', struck: true } });
    };
    expect(line('Listeners', say)).toBe(
      'Director: IFB 1, channel 3, hears Mix, receiver not returned\nClient: IFB 2, hears mix\nVideo village',
    );
    const { phone } = smallDay();
    say(phone);
    for (const form of [1, 2]) {
      const labels = headLines(reportOf(phone.day(), [], form).head).map(([label]) => label);
      expect(labels).not.toContain('Listeners');
    }
  });

  test('keeps what goes from right to left apart, and says nothing of this in the first two forms', () => {
    expect(line('Mixer', described({ mixer: 'נועה', mixerContact: '12' }))).toBe('\u2068נועה\u2069, 12');
    const { phone } = smallDay();
    described({ mixerContact: '12', tone: '-20' })(phone);
    for (const form of [1, 2]) {
      const model = reportOf(phone.day(), [], form);
      expect(headLines(model.head).map(([label]) => label)).not.toContain('Faders');
      expect(reportHtml(model)).not.toContain('-20');
      expect(headLines(model.head)).toContainEqual(['Mixer', 'N. Aske']);
    }
  });
});
