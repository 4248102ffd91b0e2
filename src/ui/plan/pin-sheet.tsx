import { markOut, pinVoice } from '../../app/commands/plan.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { outAt } from '../../day/chain/links.ts';
import type { Day, VoiceId } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { nameOf, partName } from '../words/chain.ts';
import { nameWithRecorder, recorderName, trackWithRecorder } from '../words/recorder-names.ts';
import { type PinGroup, type Pinnable, pinGroups } from './pin-groups.ts';

/** What to keep whatever is planned, on each recorder, and which of it is out of order. */
export function PinSheet({ voice, onClose }: { voice: VoiceId; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const { links } = answersNow(day);
  const groups = pinGroups(day, voice);
  const name = nameOf(day, voice);
  const had = groups.flatMap(({ has }) => has).filter(({ pin }) => pin !== 'track');
  // A channel may go to both.
  const parts = had.filter(({ id }, at) => had.findIndex((one) => one.id === id) === at);
  return (
    <Sheet title={`${name} keeps`} under="Pins hold, whatever the plan." onClose={onClose}>
      <div class="section buttons">
        {groups.map((group) => (
          <PinButtons
            key={group.recorder ?? ''}
            voice={voice}
            group={group}
            isOneOfSeveral={groups.length > 2}
          />
        ))}
      </div>
      <div class="section">
        <p class="soft">Out of order? The plan avoids it.</p>
        <div class="buttons">
          {parts.map((one) => {
            const { id } = one;
            const out = outAt(links, id)?.value ?? false;
            return (
              <Button
                key={id}
                pressed={out}
                onClick={() =>
                  run(markOut(id, !out), `${partName(day.rig, id)} ${out ? 'working' : 'out of order'}`)
                }
              >
                {pinnable(day, one)} out of order
              </Button>
            );
          })}
        </div>
      </div>
    </Sheet>
  );
}

/** Inputs and tracks are named after their recorder where there are several. */
function pinnable(day: Day, { pin, id }: Pinnable): string {
  if (pin === 'track') return trackWithRecorder(day, id);
  return pin === 'input' ? nameWithRecorder(day, id) : partName(day.rig, id);
}

interface PinButtonsProps {
  readonly voice: VoiceId;
  readonly group: PinGroup;
  /** Whether it has to be said which recorder a channel is for, and where nobody shares the track. */
  readonly isOneOfSeveral: boolean;
}

function PinButtons({ voice, group: { recorder, has, pins }, isOneOfSeveral }: PinButtonsProps) {
  const day = useDay().day.value;
  const run = useRun();
  const saved = `${nameOf(day, voice)}: pins saved`;
  const on = recorder && isOneOfSeveral ? ` on ${recorderName(day, recorder)}` : '';
  return (
    <>
      {has.map(({ pin, id }) => (
        <Button
          key={id}
          pressed={pins[pin] === id}
          onClick={() => run(pinVoice(voice, { [pin]: pins[pin] === id ? undefined : id }, recorder), saved)}
        >
          {pinnable(day, { pin, id })}
          {pin === 'channel' && on}
        </Button>
      ))}
      {recorder && (
        <Button
          pressed={pins.alone ?? false}
          onClick={() => run(pinVoice(voice, { alone: !pins.alone }, recorder), saved)}
        >
          alone{on}, no gang
        </Button>
      )}
    </>
  );
}
