import { useSignal } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { movedBy, rankVoices } from '../../app/commands/cast.ts';
import { castInOrder } from '../../day/cast-in-order.ts';
import type { Voice, VoiceId } from '../../day/model.ts';
import { useDay } from '../frame/context.ts';
import { tell } from '../frame/messages.ts';
import { Page } from '../frame/page/page.tsx';
import { Button } from '../kit/button.tsx';
import { nameOf } from '../words/chain.ts';
import { behindWords } from '../words/voice.ts';
import { useFocus } from './use-focus.ts';
import { useLeaving, useRunOnLeaving } from './use-leaving.ts';

/** The order of priority: tap a name, then move it with the buttons below. Saved as one action. */
export function OrderList({ onEnd }: { onEnd: () => void }) {
  const store = useDay();
  const run = useRunOnLeaving();
  const day = store.day.value;
  const moved = useSignal<readonly VoiceId[] | null>(null);
  const [picked, setPicked] = useState<VoiceId | null>(null);
  const stands = castInOrder(day)
    .filter(({ kind }) => kind === 'performer')
    .map(({ id }) => id);
  const order = moved.value ?? stands;

  const move = (steps: number): void => {
    if (picked === null) return;
    moved.value = movedBy(order, picked, steps);
    tell(`${nameOf(day, picked)} is ${moved.value.indexOf(picked) + 1} of ${order.length}`);
  };
  useLeaving(() => {
    const wanted = moved.peek();
    moved.value = null;
    if (wanted) run(rankVoices(wanted), 'Order of the cast changed');
  });

  return (
    <Page
      tab="cast"
      foot={
        <OrderFoot
          at={picked === null ? null : order.indexOf(picked)}
          last={order.length - 1}
          changed={moved.value !== null}
          onMove={move}
          onUndo={() => {
            moved.value = null;
            onEnd();
          }}
          onDone={onEnd}
        />
      }
    >
      <OrderHead picked={picked === null ? null : nameOf(day, picked)} />
      <ol class="rows cast-rows">
        {order.map((id, at) => (
          <li key={id}>
            <OrderRow
              voice={day.voices.get(id)!}
              at={at}
              picked={id === picked}
              onTap={() => setPicked(id === picked ? null : id)}
            />
          </li>
        ))}
      </ol>
    </Page>
  );
}

function OrderHead({ picked }: { picked: string | null }) {
  const heading = useFocus<HTMLHeadingElement>(true);
  return (
    <div class="cast-head">
      <h1 ref={heading} tabIndex={-1}>
        Who comes first?
      </h1>
      <p class="soft">{picked ? `Moving ${picked}` : 'Tap a name, then move it'}</p>
    </div>
  );
}

interface OrderRowProps {
  readonly voice: Voice;
  readonly at: number;
  readonly picked: boolean;
  readonly onTap: () => void;
}

function OrderRow({ voice, at, picked, onTap }: OrderRowProps) {
  const day = useDay().day.value;
  const row = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (picked && at >= 0) row.current?.scrollIntoView({ block: 'nearest' });
  }, [picked, at]);
  return (
    <Button look="bare" class="row order-row" ref={row} pressed={picked} onClick={onTap}>
      <span class="row-lead">
        <span class="row-number">{at + 1}</span>
      </span>
      <span class="row-text">
        <strong>{nameOf(day, voice.id)}</strong>
        <span class="soft">
          {[voice.number && `cast number ${voice.number}`, behindWords(voice)].filter(Boolean).join(' · ')}
        </span>
      </span>
      <span class="row-word">{picked && <b class="need-word">moving</b>}</span>
    </Button>
  );
}

interface OrderFootProps {
  /** The position of the picked one; null if nobody is picked. */
  readonly at: number | null;
  readonly last: number;
  readonly changed: boolean;
  readonly onMove: (steps: number) => void;
  readonly onUndo: () => void;
  readonly onDone: () => void;
}

function OrderFoot({ at, last, changed, onMove, onUndo, onDone }: OrderFootProps) {
  const steps = [
    { name: 'First', by: -last },
    { name: 'Up', by: -1 },
    { name: 'Down', by: 1 },
    { name: 'Last', by: last },
  ];
  return (
    <>
      <section class="order-steps" aria-label="Move">
        {steps.map(({ name, by }) => (
          <Button
            key={name}
            aria-disabled={at === null || (by < 0 ? at === 0 : at === last)}
            onClick={() => onMove(by)}
          >
            {name}
          </Button>
        ))}
      </section>
      <div class="cast-foot">
        <Button onClick={onUndo}>{changed ? 'Cancel' : 'Back'}</Button>
        <Button look="solid" class="cast-main" onClick={onDone}>
          Done
        </Button>
      </div>
    </>
  );
}
