import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';

/** What stands between phones and servers, as a reverse proxy or a cable does; it can be shut. */
export interface Door {
  readonly port: number;
  /** Lets nothing through, and ends what went through. */
  shut(): void;
  open(): void;
  close(): Promise<void>;
}

/** Hands each connection to the first of these ports that answers. */
export async function openDoor(ports: readonly number[]): Promise<Door> {
  const through = new Set<Socket>();
  let isShut = false;
  const server = createServer((from) => {
    through.add(from);
    from.on('error', () => from.destroy());
    from.on('close', () => through.delete(from));
    if (isShut) from.destroy();
    else hand(from, ports);
  });
  const endAll = (): void => {
    for (const socket of through) socket.destroy();
  };
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    port: (server.address() as { port: number }).port,
    shut() {
      isShut = true;
      endAll();
    },
    open() {
      isShut = false;
    },
    async close() {
      endAll();
      await new Promise((done) => server.close(done));
    },
  };
}

function hand(from: Socket, [first, ...others]: readonly number[]): void {
  if (first === undefined) {
    from.destroy();
    return;
  }
  const to = connect(first, '127.0.0.1');
  to.once('error', () => hand(from, others));
  to.once('connect', () => {
    to.removeAllListeners('error');
    to.on('error', () => to.destroy());
    to.on('close', () => from.destroy());
    from.on('close', () => to.destroy());
    from.pipe(to).pipe(from);
  });
}
