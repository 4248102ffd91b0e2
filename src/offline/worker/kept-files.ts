import { cacheNames } from 'workbox-core';
import { getCacheKeyForURL, type PrecacheEntry } from 'workbox-precaching';
import type { Kept } from '../kept-files.ts';

declare const self: ServiceWorkerGlobalScope;

/** A file of this version. `isFirst`: the app cannot start without it. */
export interface KeptFile extends PrecacheEntry {
  readonly integrity: string;
  readonly isFirst?: true;
}

/**
 * Tells a window whether every file of this version is still on the phone, and refetches what a browser short
 * of space threw away. The list is part of the worker, so reading it needs no network.
 */
export function answerWhatIsKept(files: readonly KeptFile[]): void {
  // Two windows that ask at once share one check.
  let looking: Promise<Kept> | undefined;
  self.addEventListener('message', (event) => {
    if (event.data?.type !== 'WHAT_IS_KEPT') return;
    looking ??= look(files)
      .catch((): Kept => 'no-start')
      .finally(() => {
        looking = undefined;
      });
    event.waitUntil(looking.then((kept) => event.ports[0]?.postMessage(kept)));
  });
}

async function look(files: readonly KeptFile[]): Promise<Kept> {
  const cache = await caches.open(cacheNames.precache);
  let gone = await missing(cache, files);
  if (gone.length > 0 && navigator.onLine) {
    await mend(cache, gone).catch(() => undefined);
    gone = await missing(cache, files);
  }
  if (gone.length === 0) return 'all';
  return gone.some(({ isFirst }) => isFirst) ? 'no-start' : 'some';
}

async function missing(cache: Cache, files: readonly KeptFile[]): Promise<readonly KeptFile[]> {
  const kept = new Set((await cache.keys()).map(({ url }) => url));
  return files.filter(({ url }) => !kept.has(getCacheKeyForURL(url)!));
}

/** Stops at the first file that cannot be fetched: there is no signal then. */
async function mend(cache: Cache, files: readonly KeptFile[]): Promise<void> {
  for (const { url, integrity } of files) {
    const response = await fetch(url, { cache: 'reload' });
    const bytes = await response.arrayBuffer();
    // The server may have a newer version by now, and the two must not mix. Checked here, because a fetch
    // with `integrity` fails just as it does without a network.
    if (!response.ok || (await checkOf(bytes)) !== integrity) continue;
    await cache.put(getCacheKeyForURL(url)!, new Response(bytes, { headers: response.headers }));
  }
}

/** In the list's format: W3C Subresource Integrity. */
async function checkOf(bytes: ArrayBuffer): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes);
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}
