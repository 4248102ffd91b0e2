import { useEffect, useState } from 'preact/hooks';
import { answersNow } from '../../day/answers/answers.ts';
import type { PartId, TakeId, VoiceId } from '../../day/model.ts';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { RollDock } from '../frame/page/roll-dock.tsx';
import { ConflictSheet, TakeSheet, TrackSheet, VoiceSheet } from '../frame/page/sheets.ts';
import { opensWith } from '../frame/route.ts';
import { lazy } from '../kit/lazy.tsx';
import { rollingRigs } from '../words/recorder-names.ts';
import { OpenTakes } from './open-takes.tsx';
import { Rows } from './rows.tsx';
import { SummaryLine } from './summary-line.tsx';

// Not needed once the day is under way.
const NoRig = lazy(() => import('./beginning.tsx').then((part) => part.NoRig));
const NextStep = lazy(() => import('./beginning.tsx').then((part) => part.NextStep));

const FreeSheet = lazy(() => import('./free-sheet.tsx').then((part) => part.FreeSheet));

type Open =
  | { readonly track: PartId; readonly input?: PartId }
  | { readonly voice: VoiceId }
  | { readonly take: TakeId }
  | 'free'
  | 'conflicts'
  | null;

/** The day's first screen: who is on which track now, what is wrong, and Roll. */
export function Now() {
  const day = useDay().day.value;
  const [open, setOpen] = useState<Open>(() => (opensWith.peek() === 'inputs' ? 'free' : null));
  useEffect(() => {
    opensWith.value = null;
  }, []);
  const answers = answersNow(day);
  const rigs = rollingRigs(answers);
  const [chosen, setChosen] = useState<PartId | null>(null);
  const at = Math.max(
    0,
    rigs.findIndex(({ recorder }) => recorder === chosen),
  );
  const shown = rigs[at]!;
  const next = rigs[(at + 1) % rigs.length]!;
  const close = (): void => setOpen(null);
  return (
    <Page tab="now" foot={<RollDock />}>
      <h1 class="unseen">Now</h1>
      <OpenTakes onOpen={(take) => setOpen({ take })} />
      {day.rig.tracks.length === 0 ? (
        <NoRig onConflicts={() => setOpen('conflicts')} />
      ) : (
        <>
          <SummaryLine
            answers={answers}
            shown={shown}
            onShow={rigs.length > 1 ? () => setChosen(next.recorder) : undefined}
            onTrack={(track) => setOpen({ track })}
            onVoice={(voice) => setOpen({ voice })}
            onFree={() => setOpen('free')}
            onConflicts={() => setOpen('conflicts')}
          />
          {day.takeOrder.length === 0 && <NextStep />}
          <Rows day={day} answers={answers} rigs={rigs} shown={shown} onOpen={setOpen} />
        </>
      )}
      {open === 'conflicts' && <ConflictSheet onClose={close} />}
      {open === 'free' && (
        <FreeSheet
          recorder={shown.recorder}
          onClose={close}
          onTrack={(track, input) => setOpen({ track, input })}
        />
      )}
      {open && typeof open === 'object' && 'track' in open && (
        <TrackSheet track={open.track} input={open.input} onClose={close} />
      )}
      {open && typeof open === 'object' && 'voice' in open && (
        <VoiceSheet voice={open.voice} onClose={close} />
      )}
      {open && typeof open === 'object' && 'take' in open && (
        <TakeSheet item={day.takeItems.get(open.take)!} onClose={close} />
      )}
    </Page>
  );
}
