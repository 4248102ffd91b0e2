import { registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope;

/**
 * Keeps the files that another app shared (W3C Web Share Target) until the user has seen them in the app
 * (src/ui/days/arrivals.ts), and opens the app. Works without a signal.
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

// Any web page can post a form to this address. A share sheet is not a page, so requests that name a page as
// their origin (Origin header, Fetch Metadata or referrer) are dropped. A page that hides its origin looks
// like a share sheet, so nothing is imported before the user has seen it.
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
  // Earlier shares that nobody has looked at yet stay.
  const before = (await cache.keys()).length;
  for (const [at, file] of files.entries()) {
    const kept = new Response(file, { headers: { 'x-name': encodeURIComponent(file.name) } });
    await cache.put(`/shared/${String(before + at).padStart(4, '0')}`, kept);
  }
}
