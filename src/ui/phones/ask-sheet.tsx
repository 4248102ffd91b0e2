import { useEffect, useState } from 'preact/hooks';
import { codeToAsk, letIn, type Request, spokenHere } from '../../app/live/phone-live.ts';
import { useApp, useDay } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { CodeSheet } from './code-sheet.tsx';

interface AskProps {
  readonly day: string;
  /** Where no server brings the day. */
  readonly onGet?: () => void;
  readonly onClose: () => void;
}

/** Shows the owner who asks to write, and the words to compare. */
export function AskSheet({ day, onGet, onClose }: AskProps) {
  const app = useApp();
  const [spoken, setSpoken] = useState('');
  useEffect(() => {
    void spokenHere(app, day).then(setSpoken);
  }, [app, day]);
  return (
    <CodeSheet
      day={day}
      title="Ask to write"
      under={
        onGet
          ? 'The owner of the day scans this under Phones. Once it has let this phone in, get the day.'
          : 'The owner of the day scans this under Phones. Until then this phone shares nothing of its own.'
      }
      foot={
        onGet && (
          <Button look="solid" onClick={onGet}>
            Get the day
          </Button>
        )
      }
      make={codeToAsk}
      caution="The code says who holds this phone and names its key. It lets nobody read anything."
      onClose={onClose}
    >
      <Spoken label="The owner’s phone must show the same words:" words={spoken} />
    </CodeSheet>
  );
}

const Spoken = ({ label, words }: { label: string; words: string }) => (
  <p class="section">
    {label}
    <strong class="spoken">{words}</strong>
  </p>
);

interface LetInProps {
  readonly request: Request;
  /** The other phone is let in. */
  readonly onDone?: (() => void) | undefined;
  readonly onClose: () => void;
}

/** The owner compares what both phones show, and lets the other in. */
export function LetInSheet({ request, onDone, onClose }: LetInProps) {
  const app = useApp();
  const { id } = useDay().day.value;
  const { asking, offered, spoken, isAgain } = request;
  const who = asking.name || 'a phone that nobody named';
  const isOwner = offered.offer === 'owner';
  const accept = async (): Promise<void> => {
    const done = await letIn(app, id, request);
    onClose();
    if (!done.ok) complain(done.problem);
    else {
      tell(isOwner ? `The day is handed over to ${who}` : `${asking.name || 'The phone'} may write now`);
      onDone?.();
    }
  };
  return (
    <Sheet
      title={isOwner ? `Hand the day over to ${who}?` : `Let ${who} write?`}
      under={asking.job}
      onClose={onClose}
      foot={
        <div class="buttons">
          <Button onClick={onClose}>Not now</Button>
          <Button look="solid" onClick={() => void accept()}>
            {isOwner ? 'Hand over' : 'Let in'}
          </Button>
        </div>
      }
    >
      <Spoken label="The other phone must show the same words:" words={spoken} />
      {isAgain && <p class="section">This phone was let in before. It asks with a new key.</p>}
      <p class="section soft">
        Other words mean that somebody else asks, with a photograph of the code.
        {isOwner && ' This phone then reads the day and changes nothing.'}
      </p>
    </Sheet>
  );
}
