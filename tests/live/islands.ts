import { makeStreams } from '../../.ci/hub/streams.mjs';
import { type Door, openDoor } from './door.ts';
import { freePorts, type LogServer, PASSWORDS, startLogServer } from './servers.ts';

const at = (port: number | undefined): string => `127.0.0.1:${port}`;

/** A production's cluster of three, behind one door. */
export interface Cluster {
  readonly servers: readonly LogServer[];
  /** What a reverse proxy would be. */
  readonly door: Door;
  /** Where trucks connect to. */
  readonly leafs: readonly number[];
  remove(): Promise<void>;
}

export async function startCluster(): Promise<Cluster> {
  const [routes, sockets, leafs, clients] = (await Promise.all(
    Array.from({ length: 4 }, () => freePorts(3)),
  )) as [number[], number[], number[], number[]];
  const servers = await Promise.all(
    routes.map((route, index) =>
      startLogServer('cluster', {
        HUB_NAME: `hub${index + 1}`,
        HUB_LISTEN: at(clients[index]),
        HUB_WEBSOCKET: at(sockets[index]),
        HUB_ROUTE: at(route),
        HUB_LEAFS: at(leafs[index]),
        HUB_ROUTE_1: `nats://${at(routes[0])}`,
        HUB_ROUTE_2: `nats://${at(routes[1])}`,
        HUB_ROUTE_3: `nats://${at(routes[2])}`,
      }),
    ),
  );
  await untilDone(() =>
    makeStreams({ server: servers[0]!.websocket, keeper: PASSWORDS.HUB_KEEPER, replicas: 3 }),
  );
  const door = await openDoor(sockets);
  return {
    servers,
    door,
    leafs,
    async remove() {
      await door.close();
      await Promise.all(servers.map((server) => server.remove()));
    },
  };
}

/** The small machine in a truck, and the link to the office that can be cut. */
export interface Truck {
  readonly server: LogServer;
  readonly link: Door;
  remove(): Promise<void>;
}

/** Starts a truck, and has each side hear the other. */
export async function startTruck(office: Cluster): Promise<Truck> {
  const [client, websocket] = await freePorts(2);
  const link = await openDoor(office.leafs);
  const server = await startLogServer('leaf', {
    HUB_NAME: 'truck',
    HUB_LISTEN: at(client),
    HUB_WEBSOCKET: at(websocket),
    HUB_OFFICE: `nats://truck:${PASSWORDS.HUB_TRUCK}@${at(link.port)}`,
  });
  const keeper = PASSWORDS.HUB_KEEPER;
  await untilDone(() => makeStreams({ server: server.websocket, keeper, domain: 'truck', from: ['hub'] }));
  await untilDone(() =>
    makeStreams({ server: office.servers[0]!.websocket, keeper, replicas: 3, from: ['truck'] }),
  );
  return {
    server,
    link,
    async remove() {
      await server.remove();
      await link.close();
    },
  };
}

const PATIENCE = 60;

/** A cluster that just began has no leader yet. */
async function untilDone(work: () => Promise<void>): Promise<void> {
  for (let left = PATIENCE; ; left -= 1) {
    try {
      return await work();
    } catch (error) {
      if (left === 0) throw error;
      await new Promise((done) => setTimeout(done, 500));
    }
  }
}
