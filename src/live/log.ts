import {
  type ConsumerMessages,
  type JsMsg,
  jetstream,
  jetstreamManager,
  type StreamInfo,
} from '@nats-io/jetstream';
import { headers, type NatsConnection, wsconnect } from '@nats-io/nats-core';
import type { Batch, LogConnection, LogMessage, LogPlace, LogStream } from '../app/live/log.ts';
import { fail, ok, type Problem, type Result } from '../shared/result.ts';
import { isStreamMissing, problemOf } from './failures.ts';

/** What phones said at this server, and what came from servers elsewhere: `.ci/hub/` makes both. */
const STREAMS = ['SAID', 'HEARD'];

const CONNECT_WITHIN_MS = 5000;
const ANSWER_WITHIN_MS = 5000;
/** A phone that walked out of reach notices within three of these. */
const PING_EVERY_MS = 5000;
const MOST_PINGS_OUT = 2;
/** The server says after so long that it has nothing new; two missed, and the connection is given up. */
const EXPIRES_MS = 20_000;
const HEARTBEAT_MS = 4000;
const MOST_AT_ONCE = 500;

/** Opens the log of a day at a server; `base` is the page's own address, and nothing else can be reached. */
export async function openLog(base: string, place: LogPlace, day: string): Promise<Result<LogConnection>> {
  let connection: NatsConnection | undefined;
  try {
    connection = await wsconnect({
      servers: addressOf(base, place.path),
      user: place.user,
      pass: place.password,
      timeout: CONNECT_WITHIN_MS,
      // Another server may answer next, with other streams: each connection begins anew.
      reconnect: false,
      ignoreClusterUpdates: true,
      pingInterval: PING_EVERY_MS,
      maxPingOut: MOST_PINGS_OUT,
      noEcho: false,
    });
    return ok(connected(connection, await streamsOf(connection), day));
  } catch (error) {
    await connection?.close().catch(() => {});
    return fail(problemOf(error));
  }
}

function addressOf(base: string, path: string): string {
  const url = new URL(base);
  url.protocol = url.protocol === 'https:' ? 'wss:' : 'ws:';
  url.hash = '';
  url.search = '';
  url.pathname = path;
  return url.href;
}

async function streamsOf(connection: NatsConnection): Promise<LogStream[]> {
  const manager = await jetstreamManager(connection, { checkAPI: false, timeout: ANSWER_WITHIN_MS });
  const found: LogStream[] = [];
  for (const name of STREAMS) {
    try {
      const info = await manager.streams.info(name);
      found.push({ id: idOf(name, info), name, origin: originOf(info), last: info.state.last_seq });
    } catch (error) {
      // A server that hears no other has the first stream only.
      if (found.length === 0 || !isStreamMissing(error)) throw error;
    }
  }
  return found;
}

/** Nothing of a log is ever removed: one that lost something is another one, to be read and filled anew. */
const idOf = (name: string, { created, state }: StreamInfo): string =>
  [name, created, Math.max(1, state.first_seq), state.num_deleted ?? 0].join(' ');

/** What the subjects of a server begin with, so that trucks and offices tell their own: `days.truck.*.*`. */
const originOf = ({ config }: StreamInfo): string => config.subjects?.[0]?.split('.')[1] ?? '';

function connected(connection: NatsConnection, streams: readonly LogStream[], day: string): LogConnection {
  let tellEnded: (problem: Problem) => void = () => {};
  const ended = new Promise<Problem>((done) => {
    tellEnded = done;
  });
  void connection.closed().then((error) => tellEnded(problemOf(error ?? undefined)));
  const client = jetstream(connection, { timeout: ANSWER_WITHIN_MS });
  const end = (problem: Problem): void => {
    tellEnded(problem);
    void connection.close().catch(() => {});
  };

  /** The library begins anew where a server was replaced; what it cannot mend ends the connection. */
  const watch = async (messages: ConsumerMessages): Promise<void> => {
    for await (const { type } of messages.status()) {
      if (type === 'stream_not_found' || type === 'consumer_deleted') end({ code: 'live-no-log' });
      if (type === 'heartbeats_missed' || type === 'no_responders') end({ code: 'live-slow' });
    }
  };

  return {
    streams,
    ended,
    async read({ id, name, origin }, after, hear) {
      try {
        const consumer = await client.consumers.get(name, {
          filter_subjects: `days.${origin || '*'}.${day}.*`,
          opt_start_seq: after + 1,
        });
        const { num_pending } = await consumer.info(true);
        const messages = await consumer.consume({
          max_messages: MOST_AT_ONCE,
          expires: EXPIRES_MS,
          idle_heartbeat: HEARTBEAT_MS,
          callback: (message) => hear(messageOf(id, message)),
        });
        void watch(messages);
        return ok(num_pending);
      } catch (error) {
        return fail(problemOf(error));
      }
    },
    async give({ writer, number, bytes }: Batch, again) {
      try {
        const named = headers();
        named.set('Nats-Msg-Id', [day, writer, number, ...(again > 0 ? [again] : [])].join('.'));
        const { duplicate } = await client.publish(`days.${streams[0]!.origin}.${day}.${writer}`, bytes, {
          headers: named,
          timeout: ANSWER_WITHIN_MS,
        });
        return ok(!duplicate);
      } catch (error) {
        return fail(problemOf(error));
      }
    },
    close: () => end({ code: 'live-gone' }),
  };
}

const messageOf = (stream: string, message: JsMsg): LogMessage => ({
  stream,
  sequence: message.seq,
  writer: message.subject.split('.').at(-1) ?? '',
  bytes: message.data,
  left: message.info.pending,
});
