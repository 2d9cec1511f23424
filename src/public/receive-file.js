/** In the service worker: a file that another program shares with this one is kept for the page, which is opened and asks before it reads it. */

/** One byte more than the page reads, so that the page can say what is wrong. */
const LONGEST = 40 * 1024 * 1024 + 1;

/** The name stands in a header, the first file of the form in the body; whatever else was sent is dropped. */
async function keepReceived(request) {
  const file = (await request.formData()).getAll('file').find((each) => each instanceof File);
  if (!file) return;
  const cache = await caches.open('swarfbook-received');
  const headers = { 'x-name': encodeURIComponent(file.name.slice(0, 200).toWellFormed()) };
  await cache.put('received-file', new Response(file.slice(0, LONGEST), { headers }));
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { scope } = self.registration;
  if (request.method !== 'POST' || request.url !== new URL('share', scope).href) return;
  const page = () => Response.redirect(`${scope}?received`, 303);
  event.respondWith(keepReceived(request).then(page, page));
});
