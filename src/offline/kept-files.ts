/** One file that the worker keeps for no signal, as the build lists it. */
interface KeptFile {
  readonly url: string;
  /** Part of the name under which it is kept; null where the file's own name says its version. */
  readonly revision: string | null;
}

const LIST = '/kept-files.json';
/** Where the list itself is kept, so that it can be gone through with no signal. */
const LIST_CACHE = 'rollbook-kept-files';

/**
 * Whether every file of this version is on the phone. What is missing is fetched again, so `false` means that there is a
 * gap and no signal to mend it by. A browser may throw away a part of what a site keeps, and tells nobody.
 */
export async function isAllKept(registration: ServiceWorkerRegistration): Promise<boolean> {
  const files = await listOfThisVersion();
  if (!files) return true;
  const cache = await caches.open(`workbox-precache-v2-${registration.scope}`);
  const kept = new Set((await cache.keys()).map(({ url }) => url));
  const missing = files.filter((file) => !kept.has(nameOf(file, registration.scope)));
  const mended = await Promise.all(missing.map((file) => mend(cache, file, registration.scope)));
  return mended.every(Boolean);
}

/** The name under which the worker keeps a file; see the library's `createCacheKey`. */
function nameOf({ url, revision }: KeptFile, scope: string): string {
  const name = new URL(url, scope);
  if (revision) name.searchParams.set('__WB_REVISION__', revision);
  return name.href;
}

async function mend(cache: Cache, file: KeptFile, scope: string): Promise<boolean> {
  try {
    const response = await fetch(new URL(file.url, scope), { cache: 'no-cache' });
    if (!response.ok) return false;
    await cache.put(nameOf(file, scope), response);
    return true;
  } catch {
    return false;
  }
}

/** The list of the version that runs here; undefined where there is none, or only that of another version. */
async function listOfThisVersion(): Promise<readonly KeptFile[] | undefined> {
  const files = (await listFrom(fetchedList)) ?? (await listFrom(() => caches.match(LIST)));
  const script = document.querySelector<HTMLScriptElement>('script[src^="/assets/"]');
  const own = script && new URL(script.src).pathname.slice(1);
  return files?.some(({ url }) => url === own) ? files : undefined;
}

async function fetchedList(): Promise<Response> {
  const response = await fetch(LIST, { cache: 'no-cache' });
  if (response.ok) await (await caches.open(LIST_CACHE)).put(LIST, response.clone());
  return response;
}

async function listFrom(read: () => Promise<Response | undefined>): Promise<readonly KeptFile[] | undefined> {
  try {
    const response = await read();
    return response?.ok ? ((await response.json()) as readonly KeptFile[]) : undefined;
  } catch {
    return undefined;
  }
}
