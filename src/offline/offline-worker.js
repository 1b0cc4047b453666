/**
 * The page without a network: all files of one version of it are fetched together and served from then on. The build fills in version and
 * files. A newer version waits until the page asks for it, so that no page is ever made of two versions.
 */
/* global self, caches, clients */

const VERSION = '%VERSION%';
const FILES = JSON.parse('%FILES%');
const PREFIX = 'spanwright ';
const CACHE = PREFIX + VERSION;

self.addEventListener('install', (event) => {
  const fresh = FILES.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(fresh)));
});

self.addEventListener('activate', (event) => {
  const leaveOthers = async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
    await clients.claim();
  };
  event.waitUntil(leaveOthers());
});

self.addEventListener('message', (event) => {
  if (event.data === 'use-now') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  const answer = async () => {
    const cache = await caches.open(CACHE);
    const kept = await cache.match(request.mode === 'navigate' ? './' : request, { ignoreSearch: request.mode === 'navigate' });
    return kept ?? fetch(request);
  };
  event.respondWith(answer());
});
