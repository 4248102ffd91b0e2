import { namesTogether } from '../../day/files/take-files.ts';
import type { Day, TakeId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import type { Difference } from '../../reconcile/differences/difference.ts';
import { fileNamesIn } from '../../reconcile/log-and-card/recorded.ts';
import { Button } from '../kit/button.tsx';
import { FileChoices, fileText } from './file-choices.tsx';
import { settlementWords } from './settlement-words.ts';
import { sideWords } from './side-words.ts';

interface OneProps {
  readonly day: Day;
  readonly difference: Difference;
  readonly onSettle: (settlement: CardSettlement) => void;
  readonly onTake: (take: TakeId) => void;
}

/** One difference: its take, which opens, its files, both sides, and the ways to settle it. */
export function OneDifference({ day, difference, onSettle, onTake }: OneProps) {
  const { code, take, recording, settlements } = difference;
  const known = take ? day.takes.get(take) : undefined;
  const sides = sideWords(difference);
  const isChoice = code === 'match-unsure';
  const buttons = isChoice ? settlements.filter(({ kind }) => kind !== 'describe-takes') : settlements;
  return (
    <>
      <p class="soft difference-where">
        {known && (
          <Button look="plain" label={`Open ${takeText(known)}`} onClick={() => onTake(known.id)}>
            {takeText(known)}
          </Button>
        )}
        {recording && <span>{namesTogether(fileNamesIn(recording))}</span>}
      </p>
      {code === 'recording-not-logged' && recording && <p class="soft">{fileText(day, recording)}</p>}
      {sides && (
        <dl class="difference-values">
          <dt>log</dt>
          <dd>{sides.log}</dd>
          <dt>card</dt>
          <dd>{sides.card}</dd>
        </dl>
      )}
      {isChoice && (
        <FileChoices day={day} question={difference} onSettle={(at) => onSettle(settlements[at]!)} />
      )}
      <div class="buttons">
        {buttons.map((settlement, at) => (
          <Button key={`${settlement.kind}${at}`} onClick={() => onSettle(settlement)}>
            {settlementWords(day, settlement)}
          </Button>
        ))}
      </div>
    </>
  );
}
