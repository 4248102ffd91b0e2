// The service worker: serves every file of its version from the phone. The build bundles it into `sw.js` and
// inserts the list of files here (vite.config.ts).
import { clientsClaim } from 'workbox-core';
import {
  addPlugins,
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { answerWhatIsKept, type KeptFile } from './kept-files.ts';
import { takeShared } from './share-target.ts';

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: readonly KeptFile[] };

const files = self.__WB_MANIFEST;

// A version takes over when nobody is using the one before it (src/offline/service-worker.ts), never on its
// own.
self.addEventListener('message', (event) => {
  if (event.data?.type === 'SKIP_WAITING') void self.skipWaiting();
});
clientsClaim();

// A file missing from the phone is fetched, and kept only if it is from this version. Another version's file
// is still better than none for a page that is opening.
addPlugins([
  {
    handlerDidError: async ({ event }) => (event instanceof FetchEvent ? fetch(event.request) : undefined),
  },
]);
precacheAndRoute([...files]);
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')));

takeShared();
answerWhatIsKept(files);
