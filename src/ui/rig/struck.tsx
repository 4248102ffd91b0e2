import { bringBackPart, strikeRig, struckParts } from '../../app/commands/rig.ts';
import { takesInOrder } from '../../day/takes.ts';
import { wordIn } from '../../shared/open-word.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { Section } from '../kit/section.tsx';

const TYPE_WORD = {
  input: 'input',
  track: 'track',
  send: 'send',
  receiver: 'receiver',
  channel: 'channel',
  output: 'output',
  selector: 'selector',
  transmitter: 'pack',
  recorder: 'recorder',
} as const;

/** Removed parts; a tap brings one back as it was. */
export function Struck() {
  const day = useDay().day.value;
  const run = useRun();
  const struck = struckParts(day);
  if (struck.length === 0) return null;
  return (
    <Section name="Deleted" under={struck.map(({ name }) => name).join(', ')} word={String(struck.length)}>
      <ul class="rows">
        {struck.map(({ id, name, type }) => (
          <li key={id}>
            <Row
              title={name}
              under={wordIn(TYPE_WORD, type)}
              word="bring back"
              onTap={() => run(bringBackPart(id), `${name} is back`)}
            />
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** Replaces the rig, as long as no take depends on it. */
export function StartOver() {
  const day = useDay().day.value;
  const run = useRun();
  if (takesInOrder(day).length > 0) return null;
  return (
    <div class="section">
      <Button
        look="plain"
        class="rig-over"
        onClick={() => run(strikeRig(), 'Rig deleted; Undo on the Line tab brings it back')}
      >
        Delete this rig and start again
      </Button>
    </div>
  );
}
