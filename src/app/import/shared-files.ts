/**
 * Where the worker keeps what another app shared (src/offline/worker/share-target.ts) until it is imported or
 * discarded.
 */
const SHARED_CACHE = 'rollbook-shared';

/** Names of the shared files that are waiting. */
export async function waitingNames(): Promise<readonly string[]> {
  if (!('caches' in window) || !(await caches.has(SHARED_CACHE))) return [];
  return (await keptShares()).map(({ name }) => name);
}

export const discardShared = (): Promise<boolean> => caches.delete(SHARED_CACHE);

async function keptShares(): Promise<{ readonly name: string; readonly kept: Response }[]> {
  const cache = await caches.open(SHARED_CACHE);
  const shares: { name: string; kept: Response }[] = [];
  for (const request of await cache.keys()) {
    const kept = await cache.match(request);
    const name = decodeURIComponent(kept?.headers.get('x-name') ?? '') || 'What was shared';
    if (kept) shares.push({ name, kept });
  }
  return shares;
}

export const sharedFiles = async (): Promise<readonly File[]> =>
  Promise.all((await keptShares()).map(async ({ name, kept }) => new File([await kept.blob()], name)));
