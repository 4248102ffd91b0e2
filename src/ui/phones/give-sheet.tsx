import { useEffect, useRef, useState } from 'preact/hooks';
import { answerHave, offerAll } from '../../app/exchange/giving.ts';
import type { Offer } from '../../app/sealed/offer.ts';
import type { Result } from '../../shared/result.ts';
import { useApp, useDatabase, useDay } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { useWakeLock } from '../kit/wake-lock.ts';
import { countOf } from '../words/chain.ts';
import { phoneName } from '../words/phones.ts';
import { CameraView } from './camera-view.tsx';
import { useMembers } from './members.tsx';
import { ShownCode } from './shown-code.tsx';

/** Reads what the other phone has, then shows it what it lacks, as codes for its camera. */
export function GiveSheet({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const day = useDay().day.value;
  const [offer, setOffer] = useState<Offer | null>(null);
  const isBusy = useRef(false);
  const isShared = Boolean(useMembers());
  useWakeLock(true);

  const answer = async (answering: Promise<Result<Offer> | null>): Promise<void> => {
    if (isBusy.current) return;
    isBusy.current = true;
    const answered = await answering;
    if (answered?.ok) setOffer(answered.value);
    else if (answered) complain(answered.problem);
    isBusy.current = false;
  };
  if (offer) return <Giving offer={offer} onClose={onClose} />;
  return (
    <Sheet
      forReaders
      title="Give to another phone"
      under="On the other phone tap Get from another phone, and hold the code it shows in front of this camera."
      onClose={onClose}
      foot={<Button onClick={() => void answer(offerAll(app, day.id))}>Give the whole day</Button>}
    >
      <CameraView onCode={(text) => void answer(answerHave(app, day.id, text))} />
      <p class="section soft">
        {isShared
          ? 'The codes are sealed: only phones that have joined this day can read them.'
          : 'Whoever films the codes can read what they hold: names too. Show them to your own people only.'}
      </p>
    </Sheet>
  );
}

const LEFT_OUT: Readonly<Record<NonNullable<Offer['leavesOut']>, string>> = {
  'not-admitted':
    'What was entered on this phone is not given: the owner of the day has not let it write. Show the owner its code.',
  'lacks-key':
    'What was entered on this phone since a phone was removed is not given: this one does not have the new key. Let it scan a new join code of the owner’s phone.',
};

function Giving({
  offer: { to, entries, series, leavesOut },
  onClose,
}: {
  offer: Offer;
  onClose: () => void;
}) {
  const day = useDay().day.value;
  const own = useDatabase();
  const name = to === null ? 'The other phone' : phoneName(day, to, own);
  const who = name === 'another phone' ? 'The other phone' : name;
  const number = useNumber();
  const close = (
    <Button look="solid" onClick={onClose}>
      Done
    </Button>
  );
  if (!series)
    return (
      <Sheet
        forReaders
        title="Nothing to give"
        under={`${who} has everything that is here.`}
        onClose={onClose}
        foot={close}
      >
        {leavesOut && <p class="section warn">{LEFT_OUT[leavesOut]}</p>}
      </Sheet>
    );
  const codes = countOf(series.count, 'code');
  return (
    <Sheet
      forReaders
      title={`${countOf(entries, 'entry', 'entries')} in ${codes}`}
      under="Hold it in front of the other phone's camera until that phone says that it has read everything."
      onClose={onClose}
      foot={close}
    >
      <ShownCode
        text={series.code(number)}
        label={`Codes for the other phone's camera: ${codes}`}
        number={number}
      />
      {leavesOut && <p class="section warn">{LEFT_OUT[leavesOut]}</p>}
      <p class="section soft">
        {number < series.count
          ? `Code ${number + 1} of ${series.count}`
          : `All shown once; ${countOf(number + 1 - series.count, 'code')} more for what was missed`}
      </p>
    </Sheet>
  );
}

const A_SECOND = 8;
/** For those who asked their phone for less motion. */
const SLOWLY = 3;

/** Counts the pictures shown. */
function useNumber(): number {
  const [number, setNumber] = useState(0);
  useEffect(() => {
    const isSlow = matchMedia('(prefers-reduced-motion: reduce)').matches;
    const timer = setInterval(() => setNumber((last) => last + 1), 1000 / (isSlow ? SLOWLY : A_SECOND));
    return () => clearInterval(timer);
  }, []);
  return number;
}
