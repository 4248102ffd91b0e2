import type { Batch } from '../../src/app/live/log.ts';
import type { OpenedBatch, Sealer } from '../../src/app/live/sealer.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';

const bytesOf = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));
const readPlain = (bytes: Uint8Array): { writer: string; number: number; facts: Envelope[] } | null => {
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as ReturnType<typeof readPlain>;
  } catch {
    return null;
  }
};

/** Seals nothing: for what the log does, whatever is in the batches. A batch opens after the writer's one before. */
export function plainSealer(
  day: string,
  writer: string | null,
  kept: readonly Batch[],
  strangers: readonly string[] = [],
): Sealer {
  const opened = new Map<string, number>();
  const waiting = new Map<string, Uint8Array>();
  for (const { writer, number } of kept) opened.set(writer, Math.max(opened.get(writer) ?? 0, number));
  return {
    day,
    writer,
    maySeal: async (facts) => facts,
    isAdmitted: async () => true,
    lacksKey: async () => false,
    endsBatch: () => false,
    async seal(facts) {
      const number = (opened.get(writer!) ?? 0) + 1;
      opened.set(writer!, number);
      return { writer: writer!, number, bytes: bytesOf({ writer, number, facts }) };
    },
    claimed: (bytes) => readPlain(bytes),
    async open(bytes) {
      const batch = readPlain(bytes)!;
      if (strangers.includes(batch.writer)) return 'refused';
      const name = `${batch.writer} ${batch.number}`;
      const before = opened.get(batch.writer) ?? 0;
      if (batch.number <= before) return 'number-twice';
      waiting.set(name, bytes);
      if (batch.number > before + 1) return { waits: name };
      const all: OpenedBatch[] = [];
      for (let number = batch.number; waiting.has(`${batch.writer} ${number}`); number += 1) {
        const waited = `${batch.writer} ${number}`;
        const own = waiting.get(waited)!;
        waiting.delete(waited);
        opened.set(batch.writer, number);
        const { writer: by, facts } = readPlain(own)!;
        all.push({ writer: by, number, bytes: own, facts, ...(waited !== name && { waited }) });
      }
      return { opened: all, refused: [] };
    },
  };
}
