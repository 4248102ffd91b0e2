import { expect, test, vi } from 'vitest';
import type { WiringRow } from '../../../src/upkeep/wiring/wiring-sheet.ts';
import { speaker } from '../../day/say.ts';

// The sheet leaves by the browser, which is asked what it can do as soon as the file is loaded.
vi.stubGlobal('navigator', {});
const { listenerNotes, wiringAsSheet } = await import('../../../src/ui/upkeep/wiring-pages.ts');

const row = (more: Partial<WiringRow>): WiringRow => ({
  output: 'near 1',
  lead: 'lead 4',
  input: 'AES 1',
  ...more,
});

test('a lead prints its pins, or words where pins say nothing, and its way through snake and selector', () => {
  const { rows } = wiringAsSheet(
    speaker().day(),
    [
      row({ pins: { plus: 2, minus: 3, screen: 1 } }),
      row({ words: 'to the stage box', circuit: 'A 3' }),
      row({ selector: { name: 'S1', position: 'B' } }),
    ],
    [],
  );
  expect(rows).toEqual([
    ['near 1', 'lead 4', '2 · 3 · 1', 'AES 1', ''],
    ['near 1', 'lead 4, snake A 3', 'to the stage box', 'AES 1', ''],
    ['near 1', 'lead 4', '', 'AES 1', 'S1 at B'],
  ]);
});

test('listeners are printed under the leads, each with what was said; a day without any prints no heading', () => {
  const phone = speaker();
  expect(listenerNotes(phone.day())).toEqual([]);
  const director = { name: 'Director', receiver: 'IFB 1', channel: '3', hears: 'mix', handedOut: true };
  phone.say({ kind: 'listener-described', listener: 'd', fields: director });
  phone.say({ kind: 'listener-described', listener: 'c', fields: { name: 'Client' } });
  phone.say({ kind: 'listener-described', listener: 'g', fields: { name: 'Gone', struck: true } });
  expect(listenerNotes(phone.day())).toEqual([
    'Listeners',
    'Director: IFB 1 · channel 3 · hears mix',
    'Client',
  ]);
});
