// Runs inside the service worker: says whether every file of this version is still on the phone, and fetches again what
// a browser short of room threw away. The build writes the list of files at the head of the worker (.ci/kept-files.mjs),
// so that it is there for as long as the worker is, and reading it asks nothing of the network.
{
  const { keptFiles, registration } = self;
  // As the library that fills it calls it (workbox-core, cacheNames).
  const CACHE = `workbox-precache-v2-${registration.scope}`;

  // As the library names a file of which there are versions (workbox-precaching, createCacheKey).
  const nameOf = ({ url, revision }) => {
    const name = new URL(url, registration.scope);
    if (revision) name.searchParams.set('__WB_REVISION__', revision);
    return name.href;
  };

  const missing = async (cache) => {
    const kept = new Set((await cache.keys()).map(({ url }) => url));
    return keptFiles.filter((file) => !kept.has(nameOf(file)));
  };

  const sha256 = async (bytes) =>
    btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))));

  // Ends with the first file that nobody answers for: there is no signal then.
  const mend = async (cache, files) => {
    for (const file of files) {
      const response = await fetch(new URL(file.url, registration.scope), { cache: 'reload' });
      const bytes = await response.arrayBuffer();
      // The server may have a newer version by now, and this one must not become a mixture.
      if (!response.ok || (await sha256(bytes)) !== file.sha256) continue;
      await cache.put(nameOf(file), new Response(bytes, { headers: response.headers }));
    }
  };

  // `all`, `some`, or `no-start` where a file is gone that the app cannot start without (src/offline/kept-files.ts).
  const look = async () => {
    const cache = await caches.open(CACHE);
    let gone = await missing(cache);
    if (gone.length > 0 && navigator.onLine) {
      await mend(cache, gone).catch(() => {});
      gone = await missing(cache);
    }
    if (gone.length === 0) return 'all';
    return gone.some(({ isFirst }) => isFirst) ? 'no-start' : 'some';
  };

  // Two windows that ask at once are answered by one look.
  let looking;
  self.addEventListener('message', (event) => {
    if (event.data?.type !== 'WHAT_IS_KEPT') return;
    looking ??= look()
      .catch(() => 'no-start')
      .finally(() => {
        looking = undefined;
      });
    event.waitUntil(looking.then((kept) => event.ports[0].postMessage(kept)));
  });
}
