import type { NatsConnection } from '@nats-io/nats-core';

export function asKeeper(server: string, password: string): Promise<NatsConnection>;
export function makeStreams(where: {
  server: string;
  keeper: string;
  domain?: string;
  replicas?: number;
  from?: string[];
}): Promise<void>;
