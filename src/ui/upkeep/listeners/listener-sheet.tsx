import { useState } from 'preact/hooks';
import { describeListener, hearPart, hearWords, MIX, OWN_BOOM } from '../../../app/commands/listeners.ts';
import { freshCells } from '../../../app/commands/upkeep.ts';
import {
  feedName,
  feedsOf,
  type Listener,
  listenersOf,
  receiversShared,
} from '../../../day/answers/listeners.ts';
import type { Day, ListenerFields } from '../../../day/model.ts';
import { useDay, useRun } from '../../frame/context.ts';
import { Button } from '../../kit/button.tsx';
import { Choice, TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { listenerWords, sharedWords } from '../../words/listeners.ts';

interface ListenerSheetProps {
  readonly id: string;
  readonly onClose: () => void;
}

/** One listener: what they hear, on which receiver and channel. Usual answers in one tap each. */
export function ListenerSheet({ id, onClose }: ListenerSheetProps) {
  const day = useDay().day.value;
  const run = useRun();
  const listener = listenersOf(day).find((one) => one.id === id);
  if (!listener) return null;
  const { name, receiver, channel } = listener;
  const shared = receiversShared(day).find(({ listeners }) => listeners.some((one) => one.id === id));
  const say = (fields: ListenerFields, words: string): boolean =>
    run(describeListener(id, fields), `${name}: ${words}`);
  return (
    <Sheet title={name} under={listenerWords(listener)} onClose={onClose}>
      <div class="section">
        <Hears day={day} listener={listener} />
        <Choice
          label="Receiver"
          value={receiver}
          options={namesWith(IFBS, receiver)}
          onChoose={(next) => say({ receiver: next }, next)}
        />
        {shared && <p class="warn">{sharedWords(shared)}</p>}
        <Choice
          label="Channel"
          value={channel}
          options={namesWith(CHANNELS, channel)}
          onChoose={(next) => say({ channel: next }, `channel ${next}`)}
        />
      </div>
      <div class="section">
        <Button onClick={() => run(freshCells([id]), `Fresh batteries for ${name}`)}>Fresh batteries</Button>
      </div>
      <Typed listener={listener} />
      <div class="section">
        <Button onClick={() => say({ struck: true }, 'deleted') && onClose()}>Delete {name}</Button>
      </div>
    </Sheet>
  );
}

const IFBS = ['IFB 1', 'IFB 2', 'IFB 3', 'IFB 4', 'IFB 5', 'IFB 6'];
const CHANNELS = ['1', '2', '3', '4', '5', '6'];

/** The usual answers, and the one that was given. */
const namesWith = (usual: readonly string[], said: string) =>
  [...new Set([...usual, said])].filter(Boolean).map((name) => ({ value: name, name }));

/** The mixes and sends of the rig, and what has no part of its own. */
function Hears({ day, listener }: { day: Day; listener: Listener }) {
  const run = useRun();
  const feeds = feedsOf(day);
  const words = feeds.some(({ mix }) => mix) ? [OWN_BOOM] : [MIX, OWN_BOOM];
  const said = listener.part === undefined ? listener.hears : '';
  const done = (hears: string): string => `${listener.name} hears ${hears}`;
  return (
    <fieldset class="choice">
      <legend class="soft">Hears</legend>
      <div class="buttons">
        {feeds.map((part) => (
          <Button
            key={part.id}
            pressed={part.id === listener.part}
            onClick={() => run(hearPart(listener.id, part.id), done(feedName(day, part)))}
          >
            {feedName(day, part)}
          </Button>
        ))}
        {namesWith(words, said).map(({ name }) => (
          <Button
            key={name}
            pressed={name === said}
            onClick={() => run(hearWords(listener.id, name), done(name))}
          >
            {name}
          </Button>
        ))}
      </div>
    </fieldset>
  );
}

const TYPED = { name: 'Name or job', receiver: 'Receiver', channel: 'Channel', hears: 'Hears' } as const;
type TypedField = keyof typeof TYPED;
const TYPED_FIELDS = Object.keys(TYPED) as TypedField[];

function Typed({ listener }: { listener: Listener }) {
  const run = useRun();
  const [isOpen, setOpen] = useState(false);
  const [texts, setTexts] = useState<Partial<Record<TypedField, string>>>({});
  const save = (event: Event): void => {
    event.preventDefault();
    const fields = texts.hears === undefined ? texts : { ...texts, part: null };
    if (!run(describeListener(listener.id, fields), `${listener.name} edited`)) return;
    setTexts({});
    setOpen(false);
  };
  return (
    <div class="section">
      <Button expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        Type something else
      </Button>
      {isOpen && (
        <form onSubmit={save}>
          {TYPED_FIELDS.map((field) => (
            <TextField
              key={field}
              label={TYPED[field]}
              value={texts[field] ?? listener[field]}
              onInput={(text) => setTexts({ ...texts, [field]: text })}
              capitals={field === 'name' ? 'words' : 'off'}
            />
          ))}
          <Button look="solid" type="submit" disabled={Object.keys(texts).length === 0}>
            Save
          </Button>
        </form>
      )}
    </div>
  );
}
