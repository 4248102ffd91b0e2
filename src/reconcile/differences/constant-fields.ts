import { slateText } from '../../day/slate.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';

type Field = Extract<Found, { code: 'field-never-changes' }>['detail']['field'];

/** Which fields the recorder left at one value, where the log has several: they are compared as a whole. */
export function constantFields({ match, pairs }: Checking): ReadonlySet<Field> {
  const { scenes, numbers, numbersRun, rolls } = match.habits;
  const isOne = (read: (pair: CheckedPair) => unknown): boolean => new Set(pairs.map(read)).size < 2;
  return new Set([
    ...(scenes.only !== undefined && !isOne(({ logged }) => logged.scenes[0]) ? ['scene' as const] : []),
    ...(numbersRun || (numbers.only !== undefined && !isOne(({ take }) => take.number))
      ? ['take' as const]
      : []),
    ...(rolls.only !== undefined && !isOne(({ logged }) => logged.roll) ? ['roll' as const] : []),
  ]);
}

/** One line for the card where such a field is not as the log has it. */
export function constantDifferences(checking: Checking): Found[] {
  const { pairs } = checking;
  const fields = constantFields(checking);
  const found = (
    field: Field,
    differing: readonly CheckedPair[],
    was: readonly string[],
    is: string,
  ): Found[] =>
    fields.has(field) && differing.length > 0
      ? [
          {
            code: 'field-never-changes',
            aspect: field,
            was: [...new Set(was)],
            is,
            detail: { field, count: pairs.length },
          },
        ]
      : [];
  const numbers = pairs.flatMap(({ recorded }) => recorded.number ?? []);
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return [
    ...found(
      'scene',
      pairs.filter(
        ({ logged, recorded }) => recorded.scene !== undefined && !logged.scenes.includes(recorded.scene),
      ),
      pairs.map(({ take }) => slateText(take.slate)),
      commonText(pairs, ({ recording }) => recording.scene),
    ),
    ...found(
      'take',
      pairs.filter(({ take, recorded }) => recorded.number !== undefined && recorded.number !== take.number),
      [],
      least === most ? `${least}` : `${least} to ${most}`,
    ),
    ...found(
      'roll',
      pairs.filter(({ logged, recorded }) => recorded.roll !== undefined && recorded.roll !== logged.roll),
      pairs.flatMap(({ answers }) => answers.roll || []),
      commonText(pairs, ({ recording }) => recording.tape),
    ),
  ];
}

const commonText = (pairs: readonly CheckedPair[], read: (pair: CheckedPair) => string | undefined): string =>
  pairs.map(read).find((text) => text !== undefined) ?? '';
