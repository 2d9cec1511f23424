/** A file that another program has shared with this one: the service worker keeps it (receive-file.js) until the page takes it. */

/** Calls back with the file if the page was opened because of one. Any page of the web can send one: ask before it is opened. */
export async function onReceived(take: (file: File) => void): Promise<void> {
  const { pathname, search, hash } = location;
  if (!new URLSearchParams(search).has('received')) return;
  history.replaceState(null, '', pathname + hash);
  try {
    const cache = await caches.open('swarfbook-received');
    const kept = await cache.match('received-file');
    await cache.delete('received-file');
    if (!kept) return;
    const name = decodeURIComponent(kept.headers.get('x-name') ?? '');
    take(new File([await kept.blob()], name));
  } catch {
    // A browser without caches receives nothing.
  }
}
