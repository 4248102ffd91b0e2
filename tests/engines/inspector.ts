import { once } from 'node:events';
import { WebSocket } from 'ws';
import { until } from './engine.ts';

/** A window of WebKitGTK, as its inspector's protocol shows it. */
export interface Inspected {
  /** The value of an expression in the page; it must be plain data. */
  readonly evaluate: (expression: string) => Promise<unknown>;
  readonly close: () => void;
}

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: Readonly<Record<string, unknown>>;
  readonly result?: { readonly result?: { readonly value?: unknown }; readonly wasThrown?: boolean };
  readonly error?: { readonly message: string };
}

const ANSWER_WITHIN_MS = 10_000;

/** Waits for the one window that a browser shows at this port, and listens to it. */
export async function inspectWindow(port: number): Promise<Inspected> {
  let path: string | undefined;
  await until('the inspector', async () => {
    const list = await fetch(`http://127.0.0.1:${port}/`).then(
      (response) => response.text(),
      () => '',
    );
    path = /\/socket\/\d+\/\d+\/WebPage/.exec(list)?.[0];
    return path !== undefined;
  });
  const socket = new WebSocket(`ws://127.0.0.1:${port}${path}`);
  const waiting = new Map<number, (answer: Message) => void>();
  let target: string | undefined;
  let lastId = 0;

  const hear = ({ method, params = {} }: Message): void => {
    // A page on another site gets a process of its own, and with it a target of its own.
    if (method === 'Target.targetCreated') {
      const { targetId, isProvisional } = params.targetInfo as { targetId: string; isProvisional?: boolean };
      if (!isProvisional) target = targetId;
    }
    if (method === 'Target.didCommitProvisionalTarget') target = String(params.newTargetId);
    if (method === 'Target.dispatchMessageFromTarget') {
      const answer = JSON.parse(String(params.message)) as Message;
      if (answer.id !== undefined) waiting.get(answer.id)?.(answer);
    }
  };
  socket.on('message', (data) => hear(JSON.parse(String(data)) as Message));
  await once(socket, 'open');
  await until('the page in the inspector', async () => target !== undefined);

  const evaluate = async (expression: string): Promise<unknown> => {
    lastId += 1;
    const id = lastId;
    const message = { id, method: 'Runtime.evaluate', params: { expression, returnByValue: true } };
    const answered = new Promise<Message>((done, fail) => {
      const tooLate = setTimeout(() => fail(new Error('The page does not answer')), ANSWER_WITHIN_MS);
      waiting.set(id, (answer) => {
        clearTimeout(tooLate);
        done(answer);
      });
    });
    socket.send(
      JSON.stringify({
        id,
        method: 'Target.sendMessageToTarget',
        params: { targetId: target, message: JSON.stringify(message) },
      }),
    );
    const { result, error } = await answered;
    waiting.delete(id);
    if (error || result?.wasThrown) {
      throw new Error(error?.message ?? `The page threw: ${JSON.stringify(result?.result)}`);
    }
    return result?.result?.value;
  };
  return { evaluate, close: () => socket.terminate() };
}
