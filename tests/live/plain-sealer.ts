import type { Batch } from '../../src/app/live/log.ts';
import type { Sealer } from '../../src/app/live/sealer.ts';
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
    async open({ writer: by, number, bytes }) {
      const before = opened.get(by) ?? 0;
      if (strangers.includes(by)) return 'refused';
      if (number <= before) return 'number-twice';
      if (number > before + 1) return 'not-yet';
      opened.set(by, number);
      return readPlain(bytes)!.facts;
    },
  };
}
