import { useEffect, useLayoutEffect } from 'preact/hooks';
import { Button } from './button.tsx';
import { messagePlaces, notice, sheetsOpen, trouble } from './messages.ts';
import './messages.css';

const SHOWN_MS = 6000;
/** Long enough to read, decide and reach it; undo is offered elsewhere after that, too. */
const WITH_ACTION_MS = 15_000;

/**
 * Announces what was done, from a region that outlives every screen, and lets the message go after a while.
 * Screens without a place for messages get one here. An open sheet makes the page inert, so it announces
 * itself.
 */
export function Live() {
  const { text, at, actions = [], isQuestion } = notice.value;
  useEffect(() => {
    if (!text || isQuestion) return;
    let timer: ReturnType<typeof setTimeout>;
    const wait = (ms: number): void => {
      timer = setTimeout(() => {
        // Never from under the keyboard's focus.
        if (document.activeElement?.closest('.message')) wait(SHOWN_MS);
        else notice.value = { text: '', at };
      }, ms);
    };
    wait(actions.length > 0 ? WITH_ACTION_MS : SHOWN_MS);
    return () => clearTimeout(timer);
  }, [text, at]);
  return (
    <div class="live">
      <Announced silent={sheetsOpen.value > 0} />
      {messagePlaces.value === 0 && sheetsOpen.value === 0 && <Messages />}
    </div>
  );
}

export function Announced({ silent = false }: { silent?: boolean }) {
  return (
    <p role="status" class="unseen">
      {silent ? '' : notice.value.text}
    </p>
  );
}

/** Where a screen shows messages: above what is near the thumb, which never moves for them. */
export function MessagePlace() {
  useLayoutEffect(() => {
    messagePlaces.value += 1;
    return () => {
      messagePlaces.value -= 1;
    };
  }, []);
  return sheetsOpen.value === 0 ? <Messages /> : null;
}

interface MessagesProps {
  /** Show only what was said and raised after these. */
  readonly noticesAfter?: number;
  readonly troublesAfter?: number;
}

export function Messages({ noticesAfter = 0, troublesAfter = 0 }: MessagesProps) {
  return (
    <>
      <Trouble after={troublesAfter} />
      <Done after={noticesAfter} />
    </>
  );
}

function Done({ after }: { after: number }) {
  const { text, at, actions = [] } = notice.value;
  if (!text || at <= after) return null;
  const offered = actions.filter(({ isOffered }) => isOffered?.() ?? true);
  return (
    <div class="message">
      <p>{text}</p>
      {offered.map(({ label, onTap }) => (
        <Button key={label} look="plain" onClick={onTap}>
          {label}
        </Button>
      ))}
    </div>
  );
}

function Trouble({ after }: { after: number }) {
  const raised = trouble.value;
  return (
    <div role="alert">
      {raised && raised.at > after && (
        <div class="message message-trouble">
          <p>{raised.text}</p>
          <Button
            look="plain"
            onClick={() => {
              trouble.value = null;
            }}
          >
            Close
          </Button>
        </div>
      )}
    </div>
  );
}
