// Runs inside the service worker: takes the files that another app shared with this one (W3C Web Share Target), keeps
// them until the app has asked for them (src/ui/days/arrivals.ts), and opens the app. Needs no signal.
self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method !== 'POST' || new URL(url).pathname !== '/take-in') return;
  event.respondWith(
    (async () => {
      const form = await event.request.formData();
      const text = String(form.get('text') ?? '');
      const files = form.getAll('files').filter((one) => one instanceof File);
      if (files.length === 0 && text !== '') files.push(new File([text], ''));
      const cache = await caches.open('rollbook-shared');
      for (const [at, file] of files.entries()) {
        const kept = new Response(file, { headers: { 'x-name': encodeURIComponent(file.name) } });
        await cache.put(`/shared/${String(at).padStart(4, '0')}`, kept);
      }
      return Response.redirect('/#/shared', 303);
    })(),
  );
});
