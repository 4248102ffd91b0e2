import { describe, expect, test } from 'vitest';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { textWidth } from '../../../src/report/printed/text-width.ts';
import { speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { smallDay } from '../report-day.ts';

// Written and added up by hand. Sound: 48 000 × 3 bytes × (10 s × (4 + 4 + 4 + 3) tracks + 60 s × 3) = 47.52 MB.
const GOLDEN = `SOUND REPORT

Production   Salt Road
Day          day 7
Date         2026-10-07
Roll         7A
Unit         main unit
Mixer        N. Aske
Boom         Iva Brandt
Recorder     8-track bag recorder
Sample rate  48 kHz
Bit depth    24 bit
Timecode     25 fps
Files        one poly file a take
Faders       mix post fader

TAKES
 Take       File         Start        End          Length
 24A/1      24AT1.wav    01:00:00:00  01:00:10:00  00:00:10:00
            1 Mix · 2 Boom · 3 Ines · 4 Dora
(24A/2)     24AT2.wav    01:00:40:00  01:00:50:00  00:00:10:00  circled
            - Plane at the end
            - track 3: rustle
 24B/1 FS   24BT1FS.wav  01:00:00:00  01:00:10:00  00:00:10:00
            false start
            as 24A/1 but for track 3: Tomas · track 4: Dora (muted)
 24B/1      24BT1.wav    01:00:00:00  01:00:10:00  00:00:10:00
            NG, tail slate
            1 Mix · 2 Boom · 3 Tomas, Dora (ganged)
 24C/1 MOS  no file      MOS
(WT1)       WT1.wav      01:00:00:00  01:01:00:00  00:01:00:00
            circled, wild track, scene 24

TOTALS
Takes      6, 2 circled, 5 files
Recorded   1:40
Longest    WT1, 1:00
Sound      47.5 MB on tracks in use
Nobody on  track 5
`;

describe('the plain text report', () => {
  test('of the small day reads as written by hand', () => {
    expect(reportText(reportOf(smallDay().phone.day()))).toBe(GOLDEN);
  });

  test('of a day with no takes shows the rig as it stands and says that there are none', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const text = reportText(reportOf(phone.day()));
    expect(text).toContain('  2  Boom\n');
    expect(text).toContain('\nNo takes.\n');
  });

  test('of a day of which nothing is known is whole', () => {
    expect(reportText(reportOf(speaker().day()))).toContain('Takes     0, 0 circled, 0 files');
  });

  test('names the roll before its takes where the day has more than one', () => {
    const { phone, fourth } = smallDay();
    phone.say({ kind: 'roll-changed', roll: '7B', before: fourth });
    const text = reportText(reportOf(phone.day()));
    expect(text).toContain('Rolls        7A, 7B\n');
    expect(text).toMatch(/\nRoll 7A\n 24A\/1 [\s\S]*\nRoll 7B\n 24B\/1 /);
  });

  test('says what is not settled, and says it of matters that come from elsewhere', () => {
    const { phone, second } = smallDay();
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: [] });
    phone.say(take('24', 1, 2));
    phone.say({ kind: 'take-described', take: second, fields: { start: null } });
    const text = reportText(
      reportOf(phone.day(), [{ code: 'roll-used', text: 'Roll 7A is also the roll of day 3.' }]),
    );
    expect(text).toContain(
      [
        'NOT SETTLED',
        '- 24A/2 was logged 2 times.',
        '- Track 3: Tomas, Dora on one track, not declared a gang: 24A/2.',
        '- 24AT2.wav is the file of 24A/2, 24A/2.',
        '- No start time: 24A/2.',
        '- Roll 7A is also the roll of day 3.',
        '',
      ].join('\n'),
    );
  });

  test('keeps to 72 columns with the longest words, and loses none of them', () => {
    const { phone, first } = smallDay();
    const note = `${'rustle '.repeat(70)}end`;
    const unbroken = 'x'.repeat(200);
    phone.say({ kind: 'note-added', take: first, text: note });
    phone.say({ kind: 'day-described', fields: { production: unbroken, unit: '音声'.repeat(60) } });
    phone.say({
      kind: 'voice-described',
      voice: 'ines',
      fields: { part: 'Ines the long of name '.repeat(8) },
    });
    phone.say(take('9'.repeat(100), 1, 1));
    const text = reportText(reportOf(phone.day()));
    expect(Math.max(...text.split('\n').map(textWidth))).toBeLessThanOrEqual(72);
    const squeezed = text.replaceAll(/\s+/g, '');
    for (const said of [note, unbroken, '音声'.repeat(60), '9'.repeat(100)]) {
      expect(squeezed).toContain(said.replaceAll(' ', ''));
    }
  });
});
