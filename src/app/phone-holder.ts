import type { PhoneHolder } from '../day/phones/holders.ts';

export type { PhoneHolder } from '../day/phones/holders.ts';

/** Where this phone remembers who holds it. */
export interface HolderPlace {
  /** Undefined until somebody said it. */
  read(): PhoneHolder | undefined;
  keep(holder: PhoneHolder): void;
}

const KEY = 'rollbook-holder';
const LONGEST = 200;

/** `storage` is missing where the browser refuses it: then it holds for this window only. */
export function holderPlace(storage: Storage | undefined): HolderPlace {
  let holder = readHolder(storage?.getItem(KEY));
  return {
    read: () => holder,
    keep({ name, job }) {
      holder = { name: name.trim().slice(0, LONGEST), job: job.trim().slice(0, LONGEST) };
      try {
        storage?.setItem(KEY, JSON.stringify([holder.name, holder.job]));
      } catch {
        // A full phone: it holds for this window only.
      }
    },
  };
}

function readHolder(kept: string | null | undefined): PhoneHolder | undefined {
  try {
    const [name, job] = JSON.parse(kept ?? '') as unknown[];
    if (typeof name === 'string' && typeof job === 'string') return { name, job };
  } catch {
    // Nothing was kept, or not by this app.
  }
  return undefined;
}
