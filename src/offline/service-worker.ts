/**
 * Keeps a whole version of the app, so that it opens without a network. `precache-plugin.ts` builds it on its own and puts in the
 * two names below. A page and its parts always come from one version: the page from the newest that is active, its parts by
 * their names, which carry a hash of what is in them.
 */

/** What of a service worker's surroundings is used here; the page's own types know none of it. */
interface WorkerScope {
  readonly location: Location;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LastingEvent) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: FetchEvent) => void): void;
}
interface LastingEvent {
  waitUntil(done: Promise<unknown>): void;
}
interface FetchEvent extends LastingEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}

declare const self: WorkerScope;
declare const VERSION: string;
declare const FILES: readonly string[];

const PREFIX = 'stillspot-';
const CACHE = `${PREFIX}${VERSION}`;
/** This version, and the one before it for tabs that still run it. */
const KEPT = 2;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(forgetOld().then(() => self.clients.claim())));
// Only when the user has said so: a new version never takes over under open work.
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') void self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === 'navigate' ? page(request) : part(request));
});

/** All files or none: a version of which a part is missing is not installed. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })));
}

async function forgetOld(): Promise<void> {
  const ours = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(ours.slice(0, Math.max(0, ours.length - KEPT + 1)).map((name) => caches.delete(name)));
}

async function page(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match('./', MATCH)) ?? fetch(request);
}

async function part(request: Request): Promise<Response> {
  return (await caches.match(request, MATCH)) ?? fetch(request);
}

// The server answers "Vary: Origin", and a page's own scripts ask with an origin: without this they would never be found.
const MATCH: CacheQueryOptions = { ignoreVary: true };
