/** What a browser gives for small things, in memory; it can be told to refuse. */
export function memoryStorage() {
  let entries = new Map<string, string>();
  let refuses = false;
  const area = {
    get length() {
      return entries.size;
    },
    key: (at: number) => [...entries.keys()][at] ?? null,
    getItem: (key: string) => entries.get(key) ?? null,
    setItem(key: string, value: string) {
      if (refuses) throw new DOMException('full', 'QuotaExceededError');
      entries.set(key, value);
    },
    removeItem: (key: string) => void entries.delete(key),
    clear: () => entries.clear(),
  } satisfies Storage;
  return {
    area,
    keys: () => [...entries.keys()].sort(),
    copy: () => new Map(entries),
    restore: (kept: Map<string, string>) => {
      entries = kept;
    },
    refuse: () => {
      refuses = true;
    },
    allow: () => {
      refuses = false;
    },
  };
}
