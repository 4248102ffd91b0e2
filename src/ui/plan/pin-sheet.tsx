import { markOut, pinVoice } from '../../app/commands/plan.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { outAt, pinsOf } from '../../day/chain/links.ts';
import type { Pins, VoiceId } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { nameOf, partName } from '../words/chain.ts';

/** What to keep whatever is planned, and which of it is out of order. */
export function PinSheet({ voice, onClose }: { voice: VoiceId; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const { links, voices } = answersNow(day);
  const pins = pinsOf(links, voice)?.value ?? {};
  const path = voices.find((one) => one.voice.id === voice)?.paths[0];
  const name = nameOf(day, voice);
  const has: [keyof Pins, string | null | undefined][] = [
    ['transmitter', path?.transmitter],
    ['channel', path?.transmitter ? path.channel : null],
    ['input', path?.input],
    ['track', path?.tracks[0]],
  ];
  const links4 = has.flatMap(([pin, id]) => (id ? [{ pin, id }] : []));
  return (
    <Sheet title={`${name} keeps`} under="Pins hold, whatever the plan." onClose={onClose}>
      <div class="section buttons">
        {links4.map(({ pin, id }) => (
          <Button
            key={pin}
            pressed={pins[pin] === id}
            onClick={() =>
              run(pinVoice(voice, { [pin]: pins[pin] === id ? undefined : id }), `${name}: pins saved`)
            }
          >
            {pin === 'track' ? `track ${partName(day.rig, id)}` : partName(day.rig, id)}
          </Button>
        ))}
        <Button
          pressed={pins.alone ?? false}
          onClick={() => run(pinVoice(voice, { alone: !pins.alone }), `${name}: pins saved`)}
        >
          alone, no gang
        </Button>
      </div>
      <div class="section">
        <p class="soft">Out of order? The plan avoids it.</p>
        <div class="buttons">
          {links4
            .filter(({ pin }) => pin !== 'track')
            .map(({ pin, id }) => {
              const out = outAt(links, id)?.value ?? false;
              return (
                <Button
                  key={pin}
                  pressed={out}
                  onClick={() =>
                    run(markOut(id, !out), `${partName(day.rig, id)} ${out ? 'working' : 'out of order'}`)
                  }
                >
                  {partName(day.rig, id)} out of order
                </Button>
              );
            })}
        </div>
      </div>
    </Sheet>
  );
}
