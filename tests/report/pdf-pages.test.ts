import { describe, expect, test } from 'vitest';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { sheetPdf } from '../../src/report/pdf/sheet-pdf.ts';
import { revisionOf } from '../../src/report/revision.ts';
import { take } from '../day/say.ts';
import { drawnPages } from './drawn-pages.ts';
import { smallDay } from './report-day.ts';
import { reportFonts as fonts } from './report-fonts.ts';

// The pages as they were when somebody last looked at them. A page that is meant to look otherwise is looked at again, and
// kept with `npx vitest run --project unit tests/report/pdf-pages.test.ts --update`.
const pages = (name: string): string => `pages/${name}.txt`;

/** A day of many takes, of texts too long for their places, and of all that needs a place of its own. */
function longDay() {
  const { phone, second } = smallDay();
  phone.say({
    kind: 'day-described',
    fields: {
      production: 'The Salt Road and the Long Way Back to the Harbour under the Cliffs',
      contact: `post@example.org, ${'a long way to write, '.repeat(5)}`,
      remarks: `Wind from the sea.\n${'Generator behind the barn all day. '.repeat(12)}`,
    },
  });
  phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Ines of the Three Harbours' } });
  phone.say({ kind: 'note-added', take: second, text: `${'Sea and gulls under the line. '.repeat(14)}` });
  phone.say({ kind: 'gang-declared', track: 'tr3', sources: [] });
  for (let at = 0; at < 70; at += 1) {
    if (at === 20) phone.say({ kind: 'roll-changed', roll: '7B' });
    if (at === 25) phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    if (at === 30) phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    if (at === 35) phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    if (at === 36) phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr4'] }] });
    if (at === 40) phone.say({ kind: 'track-named', track: 'tr5', name: 'Crowd left and right of the gate' });
    if (at === 45) phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: false });
    const file = at === 50 ? `${'A name that goes on '.repeat(4)}and on.wav` : undefined;
    const start = { frames: 100_000 + at * 1000, rate: '25' };
    const scene = at === 51 ? '118ABCDEFGHJKLM' : '31';
    phone.say(
      take(scene, Math.floor(at / 4), (at % 4) + 1, { start, circled: at % 9 === 0, ...(file && { file }) }),
    );
  }
  return phone.day();
}

describe('the pages as drawn', () => {
  test('of a small day', async () => {
    const { bytes } = reportPdf(reportOf(smallDay().phone.day()), { fonts });
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('small-day'));
  });

  test('of a revision on letter paper, signed, with letters that the font has not', async () => {
    const { phone, first } = smallDay();
    const sent = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Inès 音' } });
    const now = reportOf(phone.day());
    const { bytes, missing } = reportPdf(now, {
      fonts,
      paper: 'letter',
      revision: revisionOf(now, { letter: 'A', model: sent }),
      signature: 'N. Aske\nproduction sound',
    });
    expect(missing).toEqual(['音']);
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('revision'));
  });

  test('of a long day', async () => {
    const { bytes } = reportPdf(reportOf(longDay()), { fonts });
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('long-day'));
  });

  test('of a sheet with cells of several lines', async () => {
    const cell = (at: number): string =>
      at % 7 === 0 ? `near ${at} ${'by way of the snake '.repeat(4)}` : `near ${at}`;
    const bytes = sheetPdf(
      {
        title: 'Wiring sheet',
        under: 'Salt Road · day 7',
        columns: [
          { title: 'Output', share: 2 },
          { title: 'Pins', share: 1 },
          { title: 'Input', share: 3 },
        ],
        rows: Array.from({ length: 45 }, (_, at) => [cell(at), '24 · 12 · 25', `AES ${at}`]),
        notes: ['Pin 13 not connected.', 'Shells to earth at one end only. '.repeat(6)],
        date: '2026-10-07',
      },
      { fonts, paper: 'letter' },
    );
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('sheet'));
  });
});
