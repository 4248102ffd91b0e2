import { expect, test } from 'vitest';
import { type Row, verdictOn } from './row.ts';

const row = (ours: number, rest: Partial<Row>): Row => ({ work: 'this', ours, unit: 'ms', ...rest });
const beside = (value: number) => ({ by: 'another', value });

test.each([
  ['kept', row(50, { budget: 50 })],
  ['at budget', row(55, { budget: 50 })],
  ['MISSED', row(55.1, { budget: 50 })],
  ['kept', row(10, { other: beside(25), ratioBudget: 2.5 })],
  ['at budget', row(10, { other: beside(23), ratioBudget: 2.5 })],
  ['MISSED', row(10, { other: beside(22.7), ratioBudget: 2.5 })],
  ['MISSED', row(10, { budget: 20, other: beside(20), ratioBudget: 2.5 })],
  ['MISSED', row(10, { budget: 5, other: beside(100), ratioBudget: 2.5 })],
  ['', row(10, { other: beside(1) })],
] as const)('%s: a row is kept up to its budgets, at budget up to a tenth over, else missed', (said, of) => {
  expect(verdictOn(of)).toBe(said);
});
