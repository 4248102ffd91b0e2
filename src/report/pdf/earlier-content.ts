import type { CardLine } from '../card-line.ts';
import { FIRST_FORM } from '../form.ts';
import type { ReportModel } from '../model.ts';
import type { RecorderRun } from '../recorders.ts';
import type { TakeLine } from '../take-lines.ts';

/**
 * What the pages of an earlier form are identified by: the model as it was then. Their id is a hash of its JSON, so it
 * has the fields it had, in the order they had.
 */
export const earlierContent = (model: ReportModel): unknown => ({
  ...without(model, ['lists', 'written', 'handOvers']),
  ...(isFirst(model) && { form: undefined }),
  head: headThen(model),
  takes: model.takes.map((take) => takeThen(take, isFirst(model))),
  totals: isFirst(model) ? without(model.totals, ['written']) : model.totals,
  card: model.card && cardThen(model.card),
});

const isFirst = ({ form }: ReportModel): boolean => form === FIRST_FORM;

const headThen = ({ head }: ReportModel) => ({
  ...without(head, [
    ...(['form', 'main', 'apart', 'alike', 'units'] as const),
    ...(['mixerContact', 'boomContact', 'utilityContact', 'tone', 'toneRoll'] as const),
    ...(['taps', 'synced', 'jams', 'compared', 'mics', 'listeners'] as const),
  ]),
  recorders: head.recorders.map(runThen),
});

const runThen = ({ name, rolls, has, of, without }: RecorderRun) => ({ name, rolls, has, of, without });

function takeThen({ onSome, onSomeRun: _, ...take }: TakeLine, isFirst: boolean) {
  const then = {
    ...without(take, ['also', 'end', 'exact', 'lists', ...(isFirst ? (['date'] as const) : [])]),
    recorders: take.recorders.map(({ id, name, roll }) => (isFirst ? { name, roll } : { id, name, roll })),
    notes: take.notes.map((note) => without(note, ['recorder'])),
  };
  // It stood behind the recorders, said the other way round.
  const fields = Object.entries(then).flatMap((field) =>
    field[0] === 'recorders' ? [field, ['onAll', !onSome] as const] : [field],
  );
  return Object.fromEntries(fields);
}

const cardThen = (card: CardLine) => ({
  ...without(card, ['has']),
  takes: card.takes && without(card.takes, ['cards']),
});

/** JSON leaves out what is undefined; what stays keeps its place. */
const without = <Of extends object>(of: Of, fields: readonly (keyof Of)[]): Of => ({
  ...of,
  ...Object.fromEntries(fields.map((field) => [field, undefined])),
});
