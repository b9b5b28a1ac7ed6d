// Keeps the pages of the program for when there is no connection: the one page by network first, its files (which
// carry a fingerprint) by what is kept. Answers of the shop computer are never kept here.
const name = 'warmstead-pages-1';

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(name)
      .then((cache) => cache.add('/'))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});

async function networkFirst(request) {
  const cache = await caches.open(name);
  try {
    const answer = await fetch(request);
    if (answer.ok) await cache.put('/', answer.clone());
    return answer;
  } catch {
    return (await cache.match('/')) ?? Response.error();
  }
}

async function keptFirst(request) {
  const cache = await caches.open(name);
  const kept = await cache.match(request);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await cache.put(request, answer.clone());
  return answer;
}

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin || url.pathname.startsWith('/api/')) return;
  if (event.request.mode === 'navigate') event.respondWith(networkFirst(event.request));
  else if (url.pathname.startsWith('/assets/')) event.respondWith(keptFirst(event.request));
});
