import { useEffect, useRef, useState } from 'preact/hooks';
import { compareTimecode } from '../../app/commands/hearing.ts';
import type { Ear } from '../../app/ear/ear.ts';
import { tieTo } from '../../ltc/measure/tie.ts';
import { type Device, devicesOf, RECORDER } from '../../upkeep/due/day-devices.ts';
import { useDay, useRun } from '../frame/context.ts';
import { dayBeside } from '../frame/hearing/day-beside.ts';
import { HeardFigures, HeardTime } from '../frame/hearing/heard-reading.tsx';
import { LeadsNote } from '../frame/hearing/leads-note.tsx';
import { useEar } from '../frame/hearing/use-ear.ts';
import { tell } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/field.tsx';
import { raise } from '../kit/messages.ts';
import { Sheet } from '../kit/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { hearingSentence } from '../words/hearing.ts';
import { offsetWords } from './compare-words.ts';
import { DeviceRow } from './device-row.tsx';
import { boxesApart, boxHeard, type HeardBox, heardPairs, type Session, sessionOf } from './heard-boxes.ts';
import { PairsTable } from './pairs-table.tsx';

/** Hears one box after another with one phone, whose delay cancels, and keeps how far apart they are. */
export function CompareSheet({ onClose }: { onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const { now, listen } = useEar();
  const devices = devicesOf(store.day.value).filter(({ hasTimecode }) => hasTimecode);
  const [from, setFrom] = useState(RECORDER);
  const [hearing, setHearing] = useState<string | null>(null);
  const [heard, setHeard] = useState<ReadonlyMap<string, HeardBox>>(new Map());
  const session = useRef<Session | undefined>(undefined);
  const nameOf = (id: string): string => devices.find((device) => device.id === id)?.name ?? id;

  const begin = (id: string, ear: Ear): void => {
    ear.listenAnew();
    setHearing(id);
  };
  const keep = (id: string, box: HeardBox): void => {
    const reference = id === from ? box : heard.get(from);
    setHeard(new Map(heard).set(id, box));
    setHearing(null);
    // Where the one to compare with comes last, all that waited for it are compared.
    const waited: [string, HeardBox][] = heard.has(from) ? [] : [...heard];
    const compared = id === from ? waited : [[id, box] as const];
    if (reference && compared.length > 0) say(compared, reference);
    else tell(`${nameOf(id)} heard`);
  };
  const say = (compared: readonly (readonly [string, HeardBox])[], reference: HeardBox): void => {
    const { atMs } = store.clock.now();
    const found = compared.map(([device, box]) => ({ device, apart: boxesApart(reference, box) }));
    const commands = found.flatMap(({ device, apart }) =>
      apart.ok
        ? [compareTimecode({ device, from, atMs, offMs: apart.value.ms, doubtMs: apart.value.doubtMs })]
        : [],
    );
    const wrong = found.find(({ apart }) => !apart.ok)?.apart;
    const [first] = found;
    const words =
      first?.apart.ok && found.length === 1
        ? `${nameOf(first.device)} is ${offsetWords(first.apart.value)}`
        : `${countOf(commands.length, 'box', 'boxes')} compared`;
    if (commands.length > 0) run(commands, words);
    if (wrong && !wrong.ok) raise(hearingSentence(wrong.problem));
  };

  const state = now.is === 'on' ? now.state : undefined;
  useEffect(() => {
    if (now.is !== 'on') {
      session.current = undefined;
      setHearing(null);
      return;
    }
    const tie = state?.isReading && state.heard ? tieTo(state.heard) : undefined;
    if (!hearing || !tie?.ok) return;
    session.current ??= sessionOf(now.ear);
    if (session.current) keep(hearing, boxHeard(tie.value, session.current));
  }, [now]);

  return (
    <Sheet
      title="Compare boxes"
      under="Hear the recorder, then each box after it. One phone hears them all, so its own delay does not count."
      onClose={onClose}
      foot={
        now.is === 'on' ? undefined : (
          <Button look="solid" class="tap-now" disabled={now.is === 'opening'} onClick={listen}>
            {now.is === 'opening' ? 'Asking for the microphone' : 'Listen'}
          </Button>
        )
      }
    >
      {now.is === 'on' ? (
        <>
          <p class="section" role="status">
            {hearing
              ? `Hearing ${nameOf(hearing)}: two seconds are enough`
              : 'Tap Hear at the box that is playing now'}
          </p>
          <HeardTime state={state} beside={dayBeside(store)} />
        </>
      ) : (
        <p class="section">
          Listen asks for the microphone. The timecode is read on this phone; sound is never kept and never
          sent.
        </p>
      )}
      <ul class="device-rows">
        {devices.map((device) => (
          <DeviceRow
            key={device.id}
            name={device.name}
            under={underOf(device, from, heard)}
            {...(now.is === 'on' && {
              action: {
                word: hearWord(hearing === device.id, heard.has(device.id)),
                label: `${hearWord(hearing === device.id, heard.has(device.id))} ${device.name}`,
                onTap: () => begin(device.id, now.ear),
              },
            })}
          />
        ))}
      </ul>
      <PairsTable
        day={store.day.value}
        pairs={heardPairs([...new Set([from, ...devices.map(({ id }) => id)])], heard)}
        nameOf={nameOf}
        now={store.clock.now()}
      />
      {devices.length > 2 && (
        <div class="section">
          <Choice
            label="Compared with"
            value={from}
            options={devices.map(({ id, name }) => ({ value: id, name }))}
            onChoose={setFrom}
          />
        </div>
      )}
      {now.is === 'on' && <HeardFigures state={state} />}
      <LeadsNote />
    </Sheet>
  );
}

const hearWord = (isHearing: boolean, isHeard: boolean): string =>
  isHearing ? 'Hearing' : isHeard ? 'Hear again' : 'Hear';

function underOf(device: Device, from: string, heard: ReadonlyMap<string, HeardBox>): string {
  const [box, reference] = [heard.get(device.id), heard.get(from)];
  if (!box) return 'not heard yet';
  if (device.id === from) return 'heard; the others are compared with it';
  const apart = reference && boxesApart(reference, box);
  if (!apart) return 'heard; waits for the one it is compared with';
  return apart.ok ? offsetWords(apart.value) : hearingSentence(apart.problem);
}
