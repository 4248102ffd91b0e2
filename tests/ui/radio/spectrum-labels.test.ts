import { expect, test } from 'vitest';
import { SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import { analyse } from '../../../src/radio/intermodulation/analyse.ts';
import { labelled, shortName } from '../../../src/ui/radio/spectrum-labels.ts';

test('a carrier in the picture is its pack, whoever wears it, and how often it is hit', () => {
  const carrier = (id: string, khz: number) => ({ id, name: id, khz, transmitting: true, victim: true });
  const found = analyse(
    [carrier('A1', 500_000), carrier('A2', 500_400), carrier('A3', 500_800)],
    SUGGESTED_GUARDS,
  );
  if (!found.ok) throw new Error(found.problem.code);
  const { carriers, hitsOnCarrier } = labelled(found.value, (id) => ({ A3: 'Ines' })[id]);
  expect(hitsOnCarrier[2]).toBeGreaterThan(0);
  expect(carriers[2]?.name).toBe(`A3 Ines ×${hitsOnCarrier[2]}`);
  expect(carriers[1]?.name).toBe(hitsOnCarrier[1] ? `A2 ×${hitsOnCarrier[1]}` : 'A2');
  expect(found.value.carriers[2]?.name).toBe('A3');
});

test.each([
  ['Ines', 'Ines'],
  ['Judge Havlík', 'Judge Havlík'],
  ['Dr Alexandra Brandão', 'Dr Alexandr…'],
  ['Old Conductor', 'Old Conduct…'],
  ['The little boy', 'The little…'],
])('%s is written %s', (name, short) => {
  expect(shortName(name)).toBe(short);
});
