import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../src/facts/fact.ts';
import { boxLeads, spareInputs } from '../../../src/ui/upkeep/box-leads.ts';
import { leadsOfDay } from '../../../src/upkeep/wiring/day-wiring.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

/** A far box with three outputs; the first shares AES 1 with the receiver on the cart by a selector. */
const FAR: Draft[] = [
  {
    kind: 'rig-laid',
    parts: [
      { part: 'far', fields: { type: 'receiver', name: 'far', place: 'remote' } },
      ...[1, 2, 3].map((n) => ({
        part: `far${n}out`,
        fields: {
          type: 'output' as const,
          name: `far ${n}`,
          receiver: 'far',
          outputKind: 'network' as const,
          reserved: n === 3 ? ('timecode' as const) : null,
        },
      })),
      { part: 'sel', fields: { type: 'selector', name: 'S1', input: 'aes1', positions: ['cart', 'far'] } },
      { part: 'net', fields: { type: 'input', name: 'net 1', inputKind: 'network' } },
      { part: 'slot', fields: { type: 'input', name: 'slot 1', inputKind: 'slot' } },
    ],
  },
  { kind: 'leads-plugged', leads: [{ lead: 'f1', from: 'far1out', to: 'aes1', position: 'b' }] },
];

function rigged(...more: Draft[]) {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...FAR, ...more);
  return phone.day();
}

describe('the leads of the receivers', () => {
  const day = rigged();
  const boxes = boxLeads(day, leadsOfDay(day));

  test('are shown far box first, output by output, with what is spare', () => {
    expect(
      boxes.map(({ receiver, lines }) => [
        receiver.name,
        ...lines.map(({ output, lead }) => `${output.name} > ${lead?.input ?? 'nothing'}`),
      ]),
    ).toEqual([
      ['far', 'far 1 > AES 1', 'far 2 > nothing', 'far 3 > nothing'],
      ['near', 'near 1 > AES 1', 'near 2 > AES 2', 'near 3 > AES 3'],
    ]);
  });

  test('say which of two leads at a selector is through', () => {
    const through = (of: typeof boxes) =>
      of.flatMap(({ lines }) =>
        lines.flatMap(({ lead }) => (lead?.selector ? [[lead.isThrough, lead.thrownTo]] : [])),
      );
    expect(through(boxes)).toEqual([
      [false, 'cart'],
      [true, 'cart'],
    ]);
    const thrown = rigged({ kind: 'selectors-thrown', selectors: ['sel'], position: 'b' });
    expect(through(boxLeads(thrown, leadsOfDay(thrown)))).toEqual([
      [true, 'far'],
      [false, 'far'],
    ]);
  });

  test('name the same leads as the wiring sheet, each once', () => {
    const drawn = boxes.flatMap(({ lines }) => lines.flatMap(({ lead }) => lead?.id ?? []));
    const sheet = leadsOfDay(day).filter(({ from }) => !day.voices.has(from));
    expect(drawn.sort()).toEqual(sheet.map(({ id }) => id).sort());
  });

  test('leave a lead that was pulled out as a spare output', () => {
    const pulled = rigged({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: null }] });
    const near = boxLeads(pulled, leadsOfDay(pulled))[1];
    expect(near?.lines.map(({ lead }) => lead?.input)).toEqual(['AES 1', undefined, 'AES 3']);
  });
});

test('spare inputs are those that nothing reaches and a lead would fit', () => {
  expect(spareInputs(rigged())).toEqual(['net 1']);
});
