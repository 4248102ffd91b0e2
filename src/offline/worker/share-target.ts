import { registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope;

/**
 * Takes the files that another app shared with this one (W3C Web Share Target), keeps them until somebody has looked at
 * them in the app (src/ui/days/arrivals.ts), and opens the app. Needs no signal.
 */
export const takeShared = (): void =>
  void registerRoute(
    ({ url, sameOrigin }) => sameOrigin && url.pathname === '/take-in',
    async ({ request }) => {
      if (isFromAPage(request)) return Response.redirect('/#/turned-away', 303);
      try {
        await keep(await request.formData());
        return Response.redirect('/#/shared', 303);
      } catch {
        return Response.redirect('/#/not-shared', 303);
      }
    },
    'POST',
  );

// A form of any web page can be sent to this address too. The share sheet is no page: what names a page as its origin
// (Fetch Standard, Origin header; Fetch Metadata where a browser shows it here; the referrer) is not kept. A page that
// hides where it is cannot be told from a share sheet, so nothing is taken in before somebody has seen it.
function isFromAPage({ headers, referrer }: Request): boolean {
  const site = headers.get('sec-fetch-site');
  if (site === 'cross-site' || site === 'same-site') return true;
  const origin = headers.get('origin');
  if (origin !== null && origin !== 'null' && origin !== self.location.origin) return true;
  return /^https?:/.test(referrer) && new URL(referrer).origin !== self.location.origin;
}

async function keep(form: FormData): Promise<void> {
  const text = String(form.get('text') ?? '');
  const files = form.getAll('files').filter((one) => one instanceof File);
  if (files.length === 0 && text !== '') files.push(new File([text], ''));
  const cache = await caches.open('rollbook-shared');
  // What was shared before and not looked at yet keeps its place.
  const before = (await cache.keys()).length;
  for (const [at, file] of files.entries()) {
    const kept = new Response(file, { headers: { 'x-name': encodeURIComponent(file.name) } });
    await cache.put(`/shared/${String(before + at).padStart(4, '0')}`, kept);
  }
}
