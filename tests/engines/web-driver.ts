import { until } from './engine.ts';

/** The key under which an element comes and goes: W3C WebDriver, section 12, "web element identifier". */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

/** One session of the W3C protocol, as far as it is needed here. */
export interface DriverSession {
  readonly capabilities: Readonly<Record<string, unknown>>;
  readonly command: (method: 'GET' | 'POST' | 'DELETE', path: string, body?: object) => Promise<unknown>;
  /** Runs a function in the page, from its source. */
  readonly run: (inPage: (...given: never[]) => unknown, ...given: readonly string[]) => Promise<unknown>;
}

/** Waits until a driver listens at the port, then opens a session. */
export async function openDriverSession(port: number, wanted: object): Promise<DriverSession> {
  const ask = async (method: string, path: string, body?: object): Promise<unknown> => {
    const response = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const { value } = (await response.json()) as { value: unknown };
    if (!response.ok) throw new DriverError(value as { error: string; message: string });
    return value;
  };
  await until('the driver', () =>
    ask('GET', '/status').then(
      () => true,
      () => false,
    ),
  );
  const { sessionId, capabilities } = (await ask('POST', '/session', {
    capabilities: { alwaysMatch: wanted },
  })) as { sessionId: string; capabilities: Record<string, unknown> };
  const command: DriverSession['command'] = (method, path, body) =>
    ask(method, `/session/${sessionId}${path}`, body);
  return {
    capabilities,
    command,
    run: (inPage, ...given) =>
      command('POST', '/execute/sync', { script: `return (${inPage}).apply(null, arguments)`, args: given }),
  };
}

/** What a driver refuses, by the protocol's own word for it. */
export class DriverError extends Error {
  readonly code: string;
  constructor({ error, message }: { error: string; message: string }) {
    super(`${error}: ${message}`);
    this.code = error;
  }
}

/** The path of an element that a function in the page gave. */
export function elementPath(given: unknown): string | undefined {
  const id = (given as Record<string, string> | null)?.[ELEMENT];
  return id === undefined ? undefined : `/element/${id}`;
}
