import { rollIn } from '../../day/chain/links.ts';
import type { PartId } from '../../day/model.ts';
import { slateText } from '../../day/slate.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import { fieldsOfTypes, slateOfFile } from '../log-and-card/file-fields.ts';
import { cutText, plainKey, takeNumber } from '../log-and-card/plain-key.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import { constantDifferences, constantFields } from './constant-fields.ts';
import type { Found } from './difference.ts';
import { nameDifferences } from './name-differences.ts';
import { ofRecorder } from './setting-differences.ts';

/** What the files say about the takes themselves: slate, number, type, circle, notes, names and rolls. */
export function takeDifferences(checking: Checking): Found[] {
  const constant = constantFields(checking);
  return [
    ...checking.pairs.flatMap((pair) => [
      ...(constant.has('scene') ? [] : slateDiffers(checking, pair)),
      ...(constant.has('take') ? [] : numberDiffers(pair)),
      ...typeDiffers(pair),
      ...circleDiffers(pair),
      ...noteNotLogged(pair),
    ]),
    ...constantDifferences(checking),
    ...nameDifferences(checking),
    ...(constant.has('roll') ? [] : rollsDiffer(checking)),
  ];
}

/** The same fields of the take, with the file's values. */
const describing = ({ take }: CheckedPair, fields: TakeFields): Pick<Found, 'settlements'> => ({
  settlements: [{ kind: 'describe-takes', takes: [{ take: take.id, fields }] }],
});

const at = ({ take, recording }: CheckedPair) => ({ take: take.id, recording });

function slateDiffers({ header }: Checking, pair: CheckedPair): Found[] {
  const { logged, recorded, recording, take } = pair;
  const { scene } = recorded;
  if (scene === undefined || logged.scenes.includes(scene) || logged.looseScenes.includes(scene)) return [];
  const style = take.slate.style === 'unread' ? header.slateStyle : take.slate.style;
  const fields = slateOfFile(recording.scene!, style, take.slate);
  return [
    {
      code: 'slate-differs',
      ...at(pair),
      was: slateText(take.slate),
      is: recording.scene!,
      ...describing(pair, fields),
    },
  ];
}

function numberDiffers(pair: CheckedPair): Found[] {
  const { take, recording } = pair;
  const number = takeNumber(recording.take);
  if (number === undefined || number === take.number) return [];
  return [
    {
      code: 'take-number-differs',
      ...at(pair),
      was: take.number,
      is: number,
      ...describing(pair, { number }),
    },
  ];
}

/** Only what the file adds: a file is named before anybody knows how the take went. */
function typeDiffers(pair: CheckedPair): Found[] {
  const { take, recording } = pair;
  const said = fieldsOfTypes(recording.takeTypes);
  const isTone = said.kind === 'wild' && take.kind === 'tone';
  const fields: TakeFields = {
    ...(said.falseStart && !take.falseStart && { falseStart: true }),
    ...(said.noGood && !take.noGood && { noGood: true, circled: false }),
    ...(said.kind && said.kind !== take.kind && !isTone && { kind: said.kind }),
  };
  if (Object.keys(fields).length === 0) return [];
  const was = [take.kind, ...(take.falseStart ? ['false-start'] : []), ...(take.noGood ? ['no-good'] : [])];
  return [
    { code: 'take-type-differs', ...at(pair), was, is: recording.takeTypes, ...describing(pair, fields) },
  ];
}

function circleDiffers(pair: CheckedPair): Found[] {
  const { take, recording } = pair;
  const { circled } = recording;
  if (circled === undefined || circled === take.circled) return [];
  const fields: TakeFields = circled ? { circled, noGood: false } : { circled };
  return [
    { code: 'circled-differs', ...at(pair), was: take.circled, is: circled, ...describing(pair, fields) },
  ];
}

function noteNotLogged(pair: CheckedPair): Found[] {
  const { take, recording } = pair;
  const note = plainKey(recording.note ?? '');
  const logged = take.notes.map(({ text }) => plainKey(text));
  const isThere =
    logged.join(' ').includes(note) || logged.some((text) => text !== '' && note.includes(text));
  if (note === '' || isThere) return [];
  const text = cutText(recording.note!.trim(), 4000);
  return [
    {
      code: 'note-not-logged',
      ...at(pair),
      was: take.notes.map((one) => one.text),
      is: text,
      settlements: [{ kind: 'add-note', take: take.id, text }],
    },
  ];
}

/** A roll that differs for several takes in a row is one difference, at its start. */
function rollsDiffer({ pairs, recorder }: Checking): Found[] {
  const found: Found[] = [];
  let run: string | undefined;
  for (const [index, pair] of pairs.entries()) {
    const { logged, recorded } = pair;
    const differs = recorded.roll !== undefined && recorded.roll !== logged.roll;
    const key = differs ? JSON.stringify([logged.roll, recorded.roll]) : undefined;
    if (key !== undefined && key !== run) found.push(rollDiffers(pairs, index, recorder));
    run = key;
  }
  return found;
}

function rollDiffers(pairs: readonly CheckedPair[], index: number, recorder: PartId | undefined): Found {
  const pair = pairs[index]!;
  const { recorded, recording } = pair;
  const link = rollIn(pair.answers.links, recorder);
  const was = link?.value ?? '';
  const next = pairs[index + 1];
  const nextLink = next && rollIn(next.answers.links, recorder);
  // The change was entered after the take whose file already had the roll.
  const late =
    nextLink && next.logged.roll === recorded.roll && nextLink.by !== link?.by ? nextLink.by : null;
  const after = pairs.slice(index).find((one) => one.recorded.roll !== recorded.roll);
  const run = pairs.slice(index, after ? pairs.indexOf(after) : undefined);
  // Without a change back before it, that take would get the new roll too.
  const goesBack = after && was !== '' && rollIn(after.answers.links, recorder)?.by === link?.by;
  const before = pair.take.id;
  return {
    code: 'roll-differs',
    ...at(pair),
    was,
    is: recording.tape!,
    detail: { takes: run.map(({ take }) => take.id) },
    settlements: [
      ...(late ? [{ kind: 'move-changes' as const, changes: [late], before }] : []),
      {
        kind: 'change-roll',
        ...ofRecorder(recorder),
        roll: cutText(recording.tape!.trim(), 200),
        before,
        back: goesBack ? { roll: was, before: after.take.id } : null,
      },
    ],
  };
}
