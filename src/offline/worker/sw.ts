// The service worker: keeps every file of its version on the phone and answers from there, signal or not. The build
// bundles it into `sw.js` and puts the list of the files in its place here (vite.config.ts).
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

// A version is put in charge when nobody works with the one before it (src/offline/service-worker.ts), never on its own.
self.addEventListener('message', (event) => {
  if (event.data?.type === 'SKIP_WAITING') void self.skipWaiting();
});
clientsClaim();

// A file that is gone from the phone is asked of the network, and kept only where it is of this version. One of another
// version is better than none, for a page that opens now.
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
