import { expect, test } from 'vitest';
import { saidFields } from '../../../../src/ui/frame/sheets/voice-fieldset.tsx';

const TYPED = {
  part: ' Ines ',
  person: 'Anna Berg',
  number: `${'1'.repeat(19)}23`,
  place: 'x'.repeat(201),
  pickUp: ' 06:30 ',
  onSet: 'y'.repeat(41),
};

test('of what was typed, what is asked of the kind is said, trimmed and no longer than a fact takes', () => {
  expect(saidFields('performer', TYPED)).toEqual({
    part: 'Ines',
    person: 'Anna Berg',
    number: `${'1'.repeat(19)}2`,
    pickUp: '06:30',
    onSet: 'y'.repeat(40),
  });
  expect(saidFields('boom', TYPED)).toEqual({ part: 'Ines', person: 'Anna Berg' });
  for (const kind of ['plant', 'feed'] as const)
    expect(saidFields(kind, TYPED)).toEqual({ part: 'Ines', place: 'x'.repeat(200) });
});
