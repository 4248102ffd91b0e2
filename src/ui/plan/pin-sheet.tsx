import { markOut, pinVoice } from '../../app/commands/plan.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { outAt, pinsOf } from '../../day/chain/links.ts';
import type { Day, PartId, Pins, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { nameOf, partName } from '../words/chain.ts';
import { nameWithRecorder, trackWithRecorder } from '../words/recorder-names.ts';

/** Of the ways by which somebody comes in, the first into each recorder: both may be kept. */
function firstOnEach<Path extends { readonly input: PartId | null }>(
  { rig }: Day,
  paths: readonly Path[],
): readonly Path[] {
  const home = ({ input }: Path): PartId | undefined => {
    const part = rig.byId.get(input ?? '');
    return part && recorderOfPart(part);
  };
  return paths.filter((path, at) => paths.findIndex((one) => home(one) === home(path)) === at);
}

/** What to keep whatever is planned, and which of it is out of order. */
export function PinSheet({ voice, onClose }: { voice: VoiceId; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const { links, voices } = answersNow(day);
  const pins = pinsOf(links, voice)?.value ?? {};
  const paths = voices.find((one) => one.voice.id === voice)?.paths ?? [];
  const [path] = paths;
  const ofEach = firstOnEach(day, paths);
  const name = nameOf(day, voice);
  const has: (readonly [Exclude<keyof Pins, 'alone'>, string | null | undefined])[] = [
    ['transmitter', path?.transmitter],
    ['channel', path?.transmitter ? path.channel : null],
    ...ofEach.map((one) => ['input', one.input] as const),
    ...ofEach.map((one) => ['track', one.tracks[0]] as const),
  ];
  const links4 = has.flatMap(([pin, id]) => (id ? [{ pin, id }] : []));
  return (
    <Sheet title={`${name} keeps`} under="Pins hold, whatever the plan." onClose={onClose}>
      <div class="section buttons">
        {links4.map(({ pin, id }) => (
          <Button
            key={id}
            pressed={pins[pin] === id}
            onClick={() =>
              run(pinVoice(voice, { [pin]: pins[pin] === id ? undefined : id }), `${name}: pins saved`)
            }
          >
            {pin === 'track' ? trackWithRecorder(day, id) : nameWithRecorder(day, id)}
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
            .map(({ id }) => {
              const out = outAt(links, id)?.value ?? false;
              return (
                <Button
                  key={id}
                  pressed={out}
                  onClick={() =>
                    run(markOut(id, !out), `${partName(day.rig, id)} ${out ? 'working' : 'out of order'}`)
                  }
                >
                  {nameWithRecorder(day, id)} out of order
                </Button>
              );
            })}
        </div>
      </div>
    </Sheet>
  );
}
