import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';

/** A small day with a pack that moves, a mute, a gang, a clash, a wild track, an MOS setup and notes. */
export function smallDay() {
  const phone = speaker();
  phone.say(...SMALL_RIG);
  phone.say(...SMALL_CAST);
  phone.say({
    kind: 'day-described',
    fields: {
      production: 'Salt Road',
      label: 'day 7',
      date: '2026-10-07',
      unit: 'main unit',
      mixer: 'N. Aske',
      boom: 'Iva Brandt',
      recorder: '8-track bag recorder',
    },
  });
  phone.say({ kind: 'roll-changed', roll: '7A' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  const first = phone.id(take('24', 1, 1));
  const second = phone.id(take('24', 1, 2, { circled: true, start: { frames: 91_000, rate: '25' } }));
  phone.say({ kind: 'note-added', take: second, text: 'Plane at the end' });
  phone.say({ kind: 'note-added', take: second, track: 'tr3', text: 'rustle' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
  phone.say({ kind: 'voices-needed', voices: [{ voice: 'ines', need: 'resting' }] });
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A2', muted: true });
  const third = phone.id(take('24', 2, 1, { falseStart: true }));
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A2', muted: false });
  phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
  const fourth = phone.id(take('24', 2, 1, { noGood: true, tailSlate: true }));
  const mos = phone.id(take('24', 3, 1, { kind: 'mos', start: null, length: null }));
  const wild = phone.id(
    take('24', 3, 1, { kind: 'wild', circled: true, length: { frames: 1500, rate: '25' } }),
  );
  return { phone, first, second, third, fourth, mos, wild };
}
