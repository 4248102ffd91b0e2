import { Fragment } from 'preact';
import { hasSeveralRigs, ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { recordersOf, rollingNow } from '../../day/recorders/rolling.ts';
import { Row } from '../kit/row.tsx';
import { listOf } from '../words/chain.ts';
import { recorderPartsWords } from '../words/recorders.ts';
import { Inputs, type ListProps, Sends, Tracks } from './rig-lists.tsx';

/** The recorders of the day in one line, which opens all that can be said of them. */
export function RecordersRow({ day, onTap }: Pick<ListProps, 'day'> & { onTap: () => void }) {
  const all = recordersOf(day);
  const rolling = rollingNow(day);
  const isOne = all.length === 1;
  return (
    <div class="rig-recorders rows">
      <Row
        title={isOne ? 'Recorder' : 'Recorders'}
        under={all.map(({ id, name }) => `${name}, ${recorderPartsWords(day, id)}`).join(' · ')}
        word={isOne ? 'settings, or add one' : rollingWord(all.length, rolling)}
        onTap={onTap}
      />
    </div>
  );
}

function rollingWord(count: number, rolling: readonly { readonly name: string }[]): string {
  if (rolling.length < count) return `${listOf(rolling.map(({ name }) => name))} rolling`;
  return count === 2 ? 'both rolling' : 'all rolling';
}

/** The inputs, tracks and sends of each recorder, under its name where there are several. */
export function RecorderLists(lists: ListProps) {
  const { day } = lists;
  const isSeveral = hasSeveralRigs(day);
  return recordersOf(day)
    .filter(({ id }) => Object.values(ownPartsOf(day.rig, id)).some((parts) => parts.length > 0))
    .map(({ id, name }) => (
      <Fragment key={id}>
        {isSeveral && <p class="section-title soft">{name}</p>}
        <Inputs {...lists} recorder={id} of={isSeveral ? name : undefined} />
        <Tracks {...lists} recorder={id} of={isSeveral ? name : undefined} />
        <Sends {...lists} recorder={id} of={isSeveral ? name : undefined} />
      </Fragment>
    ));
}
