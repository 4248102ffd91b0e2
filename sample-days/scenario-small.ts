import { Story } from './story.ts';

/** A morning in a farmhouse kitchen: three performers, two packs, one boom. Read in a minute. */
export function smallDay(): Story {
  const s = new Story({ day: 'sample-small', window: 'small', date: '2026-05-12', zone: 120 });

  s.at('07:30').describe({
    production: 'The Orchard Ledger',
    label: 'Day 2',
    date: '2026-05-12',
    unit: 'main unit',
    mixer: 'Tove Halloran-Beck',
    boom: 'Idris Quill',
    recorder: '8-track bag recorder',
    timecodeRate: '25',
    sample: true,
  });
  // Track 1 is the mix; the boom is on 2, a second mic input on 3 stays free, the two packs are on 4 and 5.
  s.at('07:34').recorder('8 tracks, 2 mic/line, 2 AES3');
  s.receiver('rx', 'receiver', 'bag', 2, 'aes3').packs('A', 2);
  s.tune(['rx-ch1', 'rx-ch2'], ['A1', 'A2']).plugBlock(['rx-out1', 'rx-out2'], ['aes31', 'aes32']);
  s.at('07:50').callSheet(
    `1. Lieve - Anneke Storm-Vidal
     2. Opa - Corneel Basteyns
     3. Auctioneer - Yusuf Tarrant`,
    ['lieve', 'opa', 'auctioneer'],
  );
  s.hardline('boom', { kind: 'boom', part: 'Boom', person: 'Idris Quill', priority: 400 }).plug(
    'boom',
    'mic1',
  );

  // The recorder is two seconds ahead of the phone.
  s.at('08:41:00').follow('08:41:02:00').soundRoll('OL2');
  s.at('08:50').give('A1', 'lieve').give('A2', 'opa').needed('lieve', 'opa');

  s.at('09:05').slate('3');
  s.take('09:12:05', '09:13:01');
  s.take('09:18:30.400', '09:19:42.400').circle();
  s.take('09:24:10', '09:25:20.500').circle();

  // Opa leaves the kitchen, the auctioneer comes in: the pack moves.
  s.at('09:40').slate().give('A2', 'auctioneer').needed('auctioneer').resting('opa');
  s.take('09:51:00', '09:51:40').noGood();
  s.take('09:55:20.200', '09:56:35.200').circle().note('clothing rustle', 'tr5');
  s.take('10:02:00', '10:03:30').circle();

  // Noticed late: Lieve had no line after the first take, and her pack was muted from the second on.
  s.at('10:11').mute('A1', s.before('3A/2'));
  return s;
}
