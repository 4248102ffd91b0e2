import { pinVoice } from '../src/commands/line/plan-ahead.ts';
import * as prep from './full-prep.ts';
import { Story } from './story.ts';

const run = (prefix: string, from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, at) => `${prefix}${from + at}`);

const SELECTORS = run('sel-line', 1, 4);

/**
 * A night at a snowed-in railway station, told as its mixer lived it: from the rig at a quarter past three in the
 * afternoon to the last setup at four in the morning.
 */
export function fullDay(): Story {
  const s = new Story({ day: 'sample-full', window: 'night', date: '2026-11-19', zone: 60 });
  layTheRig(s);
  prep.planTheRadio(s);
  prep.runTheCables(s);
  prep.prepareTheNight(s);
  meetTheCast(s);
  waitingRoom(s);
  buffetKitchen(s);
  overDinner(s);
  platform(s);
  platformAfterMidnight(s);
  signalBox(s);
  compartment(s);
  return s;
}

/**
 * Tracks: 1 mix, 2 and 3 booms, 4 and 5 mic inputs for whatever comes, 6 to 9 lines 1 to 4 (behind selectors: the cart's
 * receiver or the far box), 10 and 11 lines 5 and 6, 12 and 13 the network, 14 and 15 slots 1 and 2, 16 slots 3 and 4.
 */
function layTheRig(s: Story): void {
  s.at('15:10').describe({
    production: 'Nine Below Arnholt',
    label: 'Night 14',
    date: '2026-11-19',
    unit: 'main unit',
    mixer: 'Ilka Brandsæter',
    boom: 'Jurrien Mätlik, Saskia Odvar',
    utility: 'Bram Ellesø',
    contact: 'sound@arnholt.example',
    recorder: 'Cart',
    sampleRate: 48_000,
    bitDepth: '24',
    timecodeRate: '25',
    fileLayout: 'poly',
    slateStyle: 'lettered',
    filePattern: '{roll}_{slate}T{take:2}',
    sample: true,
  });
  s.at('15:15').recorder('16 tracks, 4 mic/line, 6 line, 2 network, 4 slots');
  s.receiver('cart', 'cart', 'cart', 6, 'analogue').packs('A', 6);
  s.tune(run('cart-ch', 1, 6), run('A', 1, 6)).plugBlock(run('cart-out', 1, 6), run('line', 1, 6));
  s.at('15:22').receiver('far', 'far box', 'remote', 6, 'network').packs('B', 7);
  s.tune(run('far-ch', 1, 6), run('B', 1, 6));
  s.selectors(run('line', 1, 4), ['cart', 'far box']);
  s.plugBlock(run('far-out', 1, 4), run('line', 1, 4), 'b');
  s.plugBlock(run('far-out', 5, 6), run('network', 1, 2));
  s.keptOutput('far', 'far-out7', 'far box 7', 'timecode');
  s.keptOutput('far', 'far-out8', 'far box 8', 'comms');
  s.at('15:31').receiver('slot', 'slot', 'cart', 4, 'slot').packs('C', 4);
  s.tune(run('slot-ch', 1, 4), run('C', 1, 4)).plugBlock(run('slot-out', 1, 4), run('slot', 1, 4));
  // A bag stands by for what the cart cannot be rolled to.
  s.at('15:33').recorderBeside('Bag', '6 tracks, 2 mic');
}

function meetTheCast(s: Story): void {
  s.at('16:05').callSheet(
    `1. Rozália - Marguerite Ostholm
     2. Emil - Laurens Dębnik
     3. Åse - Solveig Aarntzen
     4. Dr Brandão - Caetano Pimentel-Ruas
     5. Ксенија - Milunka Zoranov
     6. Judge Havlík - Aurel Windisch-Kole
     7. Wiktorja - Halszka Pruss
     8. Old Tibor - Gellért Amberg
     9. Siân - Non Tregarrow
     10. Conductor - Fabrice Oyelm
     11. Zuzu - Mirte Ostholm
     12. Otto - Joris Ostholm
     13. Stoker - Göran Lyth`,
    [
      'rozalia',
      'emil',
      'ase',
      'brandao',
      'ksenija',
      'havlik',
      'wiktoria',
      'tibor',
      'sian',
      'conductor',
      'zuzu',
      'otto',
      'stoker',
    ],
  );
  s.hardline('boom1', { kind: 'boom', part: 'Boom Jurrien', person: 'Jurrien Mätlik', priority: 400 });
  s.hardline('boom2', { kind: 'boom', part: 'Boom Saskia', person: 'Saskia Odvar', priority: 401 });
  s.hardline('plant', { kind: 'plant', part: 'Plant stove', place: 'behind the stove', priority: 410 });
  s.hardline('pa', { kind: 'feed', part: 'Station PA', place: 'loudspeaker feed', priority: 420 });
  s.scenes(
    `41 INT. WAITING ROOM - NIGHT 2 6/8 1, 2, 3, 4, 8
     42 INT. BUFFET KITCHEN - NIGHT 1 4/8 2, 3, 7-12
     43 EXT. PLATFORM - NIGHT 3 2/8 1-10, 13
     44 INT. SIGNAL BOX - NIGHT 1 7/8 2, 4-9, 11-13
     45 INT. COMPARTMENT - NIGHT 2 1/8 1, 2, 5, 7, 9-13
     46 EXT. SIDING - DAWN 4/8 1, 9, 13`,
  );
  s.plug('boom1', 'mic1').plug('boom2', 'mic2');
  // The recorder is three seconds ahead of the phone.
  s.at('16:20:41').follow('16:20:44:00').soundRoll('14A');
  prep.beforeTheFirstTake(s);
  s.at('16:40').give('A1', 'rozalia').give('A2', 'emil').give('A3', 'ase').give('A6', 'tibor');
}

/** Scene 41: near the cart, everything by the cart's receiver. */
function waitingRoom(s: Story): void {
  s.at('17:10').slate('41').needed('rozalia', 'emil', 'ase', 'tibor').resting('brandao');
  s.take('17:31:12.400', '17:31:21').falseStart();
  s.take('17:33:40', '17:35:52.200').noGood().note('Bell rings early, everybody starts over');
  s.take('17:39:05.600', '17:41:20').note('plane over the last third');
  s.take('17:46:30.080', '17:48:41.080').circle();

  // Åse leaves, the doctor comes in and gets her pack; a mic goes behind the stove.
  s.at('17:52').slate().give('A3', 'brandao').needed('brandao').resting('ase').plug('plant', 'mic3');
  s.take('18:04:10', '18:05:31.500').note('stove door clanks', 'tr4');
  s.take('18:09:22.720', '18:10:50.720').circle();
  s.take('18:14:00', '18:14:07').falseStart();
  s.take('18:15:02.200', '18:16:29').circle().note('clothing rustle on the first line', 'tr8');

  // The announcement is played in; Tibor snores on camera and is switched off.
  s.at('18:22').slate().plug('pa', 'mic4').mute('A6').resting('tibor');
  s.take('18:33:15', '18:34:05');
  s.take('18:37:40.360', '18:38:33.360').circle().note('distorted, announcement too hot', 'tr5');
  s.take('18:42:10', '18:42:35', 'pickup').circle().note('From "Where is the nine-forty"');

  // The station clock, without sound.
  s.at('18:46').slate().mos('18:51:00').mos('18:54:30').circle();

  // Close on Rozália: one boom is enough.
  s.at('18:57').slate().mute('mic2').takeOff('A6').unplug('pa').resting('pa');
  s.take('19:05:00', '19:06:10').noGood().note('phone in the room');
  s.take('19:08:30.840', '19:09:44.840').circle();
  s.take('19:13:05.120', '19:14:20');
  s.take('19:17:00', '19:17:48', 'wild').circle().note('Rozália, lines over the bell, three times');
  s.take('19:19:30', '19:20:35', 'tone').note('waiting room, stove lit');
}

/** Scene 42: still near the cart. The twins share track 16, on purpose. */
function buffetKitchen(s: Story): void {
  prep.beforeTheKitchen(s);
  s.at('19:28').sceneDone('41').slate('42').give('A1', 'wiktoria').give('A2', 'sian').give('A3', 'ase');
  s.give('A6', 'conductor').unmute('A6').unmute('mic2').unplug('plant');
  s.give('C3', 'zuzu').give('C4', 'otto').gang('tr16');
  s.needed('wiktoria', 'sian', 'ase', 'conductor', 'zuzu', 'otto');
  s.resting('rozalia', 'emil', 'brandao', 'tibor', 'plant');
  s.take('19:58:20', '20:00:05').noGood().note('Plates dropped off set');
  s.take('20:03:10.440', '20:04:58.440').circle().note('Otto off mic', 'tr16');
  s.take('20:08:02', '20:09:52.600');
  s.take('20:13:00', '20:14:49').circle();

  s.at('20:18').slate().give('A6', 'tibor').needed('tibor').resting('conductor');
  s.take('20:26:12', '20:27:02');
  s.take('20:29:45.680', '20:30:41.680').circle().note('mic rub', 'tr11');

  // Otto falls asleep; track 16 is Zuzu alone.
  s.at('20:34').slate().takeOff('C4').resting('otto');
  s.take('20:41:00', '20:41:58');

  s.at('20:51').slate().resting('sian');
  s.take('20:55:30', '20:56:22');
  s.take('20:58:41.200', '20:59:40');
  s.take('21:02:15', '21:03:12').circle().tailSlate();
}

/** What was missed is put right; the bank goes over to the far box. */
function overDinner(s: Story): void {
  // The phone lay in a coat during this one.
  s.at('21:12').typedTake('42B', 2, '20:45:10:12', '1:03', s.before('42C/1')).circle('42B/2');
  s.noteOn('42B/2', 'Logged from the camera sheet');
  // Emil had taken Siân's pack for the voice behind the door, one take in.
  s.at('21:24').give('A2', 'emil', s.before('42C/2'));
  s.at('21:26').spell('wiktoria', { part: 'Wiktoria' });
  prep.duringDinner(s);
  s.at('21:40').soundRoll('14B');
  s.at('21:44:17.080').follow('21:44:20:00');
  prep.jamAgain(s);
}

/** Scene 43, before midnight: out of the cart's reach, by the far box. */
function platform(s: Story): void {
  s.at('21:48').sceneDone('42').slate('43').throwTo('b', SELECTORS);
  s.takeOff('A2').takeOff('A3').takeOff('A6').takeOff('C3');
  s.give('B1', 'rozalia').give('B2', 'emil').give('B3', 'ase').give('B4', 'brandao');
  s.give('B5', 'ksenija').give('B6', 'havlik');
  s.needed('rozalia', 'emil', 'ase', 'brandao', 'ksenija', 'havlik');
  s.resting('wiktoria', 'tibor', 'zuzu', 'sian', 'conductor', 'stoker');
  s.take('22:06:10.080', '22:08:00.080').noGood().note('wind');
  s.take('22:11:32', '22:13:25');
  s.take('22:17:05.480', '22:18:59.480').circle().note('wind', 'tr6').note('radio hit', 'tr13');

  // The judge gets the spare pack. Wiktoria stands in the door, near the cart: one selector goes back.
  s.at('22:22').slate().takeOff('B6').retune('far-ch6', 'B7').give('B7', 'havlik');
  s.throwTo('a', ['sel-line1']).needed('wiktoria').resting('rozalia');
  prep.freshForTheDoor(s);
  s.take('22:29:00.080', '22:30:10.080');
  s.take('22:33:20.080', '22:34:32.080').circle();

  s.at('22:37').slate().throwTo('b', ['sel-line1']).give('B3', 'conductor');
  s.needed('rozalia', 'conductor').resting('wiktoria').done('ase');
  s.take('22:44:40.080', '22:46:01.080').noGood().note('dropout', 'tr13');
  s.take('22:49:05.280', '22:50:29.280');
  s.take('22:53:30.080', '22:54:50.080').circle();
  s.take('22:57:00.080', '22:57:22.080', 'pickup').note('From the whistle');

  s.at('22:59').slate().give('B7', 'stoker').mute('B2').needed('stoker').resting('havlik', 'emil');
  s.take('23:05:10.080', '23:06:00.080');
  s.take('23:08:45.880', '23:09:37.880').circle();

  // Saskia goes to thaw; the long lead comes off.
  s.at('23:12').slate().unmute('B2').unplug('boom2').needed('emil').resting('boom2');
  s.take('23:17:30.080', '23:18:40.080');
  s.take('23:21:15.080', '23:22:28.080').circle().note('Footsteps on snow, meant');

  s.at('23:26').slate().give('B5', 'sian').needed('sian').resting('ksenija');
  s.take('23:41:05.080', '23:42:20.080').noGood().note('generator hum');
  s.take('23:47:50.680', '23:49:10.680');
}

/** Scene 43 goes on: the same night, the same day of the production. */
function platformAfterMidnight(s: Story): void {
  s.take('23:58:41.320', '00:00:20.320').circle().note('Runs past midnight');
  s.take('00:04:12.080', '00:04:18.080').falseStart();
  s.take('00:05:30.080', '00:06:48.080').circle();

  // Tibor sits by the lamp hut, near the cart, with a pack of the cart's.
  s.at('00:12').slate().takeOff('B2').give('A2', 'tibor').throwTo('a', ['sel-line2']);
  s.needed('tibor').resting('emil');
  s.take('00:19:40.080', '00:20:31.080');
  s.take('00:23:05.080', '00:23:58.080').circle();
  // Rolled in a pocket.
  s.take('00:25:02.080', '00:25:09.080').takeBackTake('43F/3');

  s.at('00:27').slate().plug('boom2', 'mic2').needed('boom2').resting('brandao');
  s.take('00:33:10.080', '00:34:20.080');
  s.take('00:37:45.480', '00:38:54.480');
  s.take('00:42:00.080', '00:43:12.080').circle();
  // Said a take too late: Emil has worn the doctor's pack since take 2.
  s.at('00:44').give('B4', 'emil').moveLastBefore('43G/2').needed('emil');

  s.at('00:46').slate().give('B5', 'ksenija').give('B3', 'havlik');
  s.needed('ksenija', 'havlik').resting('sian', 'conductor');
  s.take('00:55:20.080', '00:56:40.080');
  s.take('00:59:30.080', '01:00:53.080').circle().note('clothing rustle', 'tr8');
  s.take('01:03:10.080', '01:04:30.080').note('camera noise');

  // The letter I is left out: after 43H comes 43J. The announcement is played in again.
  s.at('01:06').slate().plug('pa', 'mic4').needed('pa');
  s.take('01:14:00.080', '01:15:32.080');
  s.take('01:18:45.080', '01:20:20.080').circle().tailSlate();
  // Jurrien walks down to the train with the bag.
  s.at('01:21').unitMovesTo('Bag', 'boom1').rollIn('Bag', '14E');
  prep.intoTheBag(s);
  s.take('01:24:10.080', '01:25:00.080', 'wild').note('Brakes of the train, two passes');
  s.take('01:27:00.080', '01:28:00.080', 'tone').note('platform, little wind');
  s.at('01:30').backAgain();
}

/** Scene 44: upstairs, near the cart again. It is the judge's only night, so a backup rolls along. */
function signalBox(s: Story): void {
  s.at('01:33')
    .soundRoll('14C')
    .sceneDone('43')
    .slate('44')
    .throwTo('a', SELECTORS)
    .unplug('pa')
    .resting('pa');
  s.takeOff('B1').takeOff('B3').takeOff('B4').takeOff('B5').takeOff('B7');
  s.give('A3', 'emil').give('A4', 'sian').give('A5', 'ksenija').give('A6', 'stoker');
  s.give('C1', 'havlik').give('C3', 'zuzu');
  // A slip at the recorder: slot 1 on track 16, where Zuzu is.
  s.send('slot1', 'tr16');
  s.needed('wiktoria', 'tibor', 'emil', 'sian', 'ksenija', 'stoker', 'havlik', 'zuzu').resting(
    'rozalia',
    'brandao',
    'otto',
  );
  prep.backAtTheCart(s);
  s.at('01:50').backup('Backup').rollIn('Backup', '14F');
  prep.theBackup(s);
  s.take('02:02:10.080', '02:03:30.080').note('Judge and Zuzu on one track', 'tr16');
  s.at('02:04').send('slot1', 'tr14');
  s.take('02:08:40.080', '02:10:05.080');
  s.take('02:14:15.680', '02:15:43.680').circle();

  // Otto is awake. Siân is out of the shot: muted, thought better of, muted after all.
  s.at('02:19').slate().give('C4', 'otto').needed('otto');
  s.mute('A4').undo().redo().resting('sian');
  // The wrong line.
  s.mute('line1').undo();
  s.take('02:29:00.080', '02:30:05.080').noGood().note('phone');
  s.take('02:33:12.080', '02:34:20.080').circle().note('overlap', 'tr16');
  s.take('02:38:00.080', '02:39:06.080');
  // Its card light was out.
  s.at('02:40').rolledAt('44A/3', 'Cart');

  s.at('02:42').slate().mos('02:50:00').circle();

  s.at('02:52').slate().unmute('A4').give('A6', 'brandao').needed('sian', 'brandao').resting('stoker');
  s.take('03:00:05.080', '03:01:00.080');
  s.take('03:04:30.080', '03:05:28.080').circle();
}

/** Scene 45: the carriage at the siding. The night ends in the middle of it. */
function compartment(s: Story): void {
  s.at('03:08')
    .rolls('Cart')
    .sceneDone('44')
    .slate('45')
    .give('A2', 'rozalia')
    .give('A3', 'conductor')
    .give('C2', 'emil');
  s.takeOff('A6').takeOff('C1').done('tibor', 'brandao', 'havlik');
  s.needed('rozalia', 'conductor', 'emil').resting('stoker');
  prep.intoTheCarriage(s);
  s.take('03:21:10.080', '03:22:45.080');
  s.take('03:26:00.080', '03:27:41.080').circle().note('off mic', 'tr15');

  s.at('03:30').slate().give('C2', 'stoker').needed('stoker').done('emil');
  s.take('03:38:30.080', '03:39:20.080');
  s.take('03:42:05.080', '03:42:58.080').noGood().note('crew noise');
  s.take('03:45:10.080', '03:46:04.080').circle();

  s.at('03:49').slate().mute('A3').resting('conductor');
  // Siân's pack is sewn into her coat: whatever is planned next, she keeps it.
  s.say((day) => pinVoice(day, 'sian', { transmitter: 'A4' }));
  prep.theVideoLinkComesOn(s);
  s.take('03:57:40.080', '03:58:35.080');
  s.take('04:01:20.080', '04:02:18.080').note('clothing rustle', 'tr6');
}
