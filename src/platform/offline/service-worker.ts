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
/** Lies in the cache of a version that has run. */
const HAS_RUN = './has-run';

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
  // First, so that nothing is fetched for a page that cannot be kept.
  const start = await wholePage();
  const cache = await caches.open(CACHE);
  const wanted = await Promise.all(FILES.filter((file) => file !== './').map((file) => orKnown(file, cache)));
  await cache.addAll(wanted.filter((file) => file !== null).map(fresh));
  await cache.put('./', start);
}

/**
 * The page as it lies on the server now. Between the answer that brought this worker and this one the server may have got another
 * version: a page that names a part which is none of this version's is not kept with it.
 */
async function wholePage(): Promise<Response> {
  const response = await fetch(fresh('./'));
  const html = await response.text();
  const parts = [...html.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, name = '']) => name);
  if (!response.ok || parts.length === 0 || !parts.every((name) => FILES.includes(name))) {
    throw new Error('The page on the server is not of this version.');
  }
  // Made anew: an answer that was sent on from elsewhere may not be given to a page that is being opened.
  return new Response(html, { headers: response.headers });
}

/** Takes a file over from an earlier version where its name says that it is the same; the name of one that must be fetched. */
async function orKnown(file: string, cache: Cache): Promise<string | null> {
  const known = file.includes('/') ? await caches.match(file, MATCH) : undefined;
  if (!known) return file;
  await cache.put(file, known);
  return null;
}

const fresh = (file: string) => new Request(file, { cache: 'reload' });

/**
 * Keeps this version and the one that ran until now, for tabs that go on with it; what was kept after this one is about to be
 * installed. All else goes, also versions that never ran.
 */
async function forgetOld(): Promise<void> {
  const ours = (await caches.keys()).filter((name) => name.startsWith(PREFIX)); // in the order in which they were made
  const older = ours.slice(0, ours.indexOf(CACHE));
  const ran = await Promise.all(older.map(async (name) => (await caches.open(name)).match(HAS_RUN)));
  const last = ran.findLastIndex((mark) => mark !== undefined);
  await Promise.all(older.filter((_, index) => index !== last).map((name) => caches.delete(name)));
  await (await caches.open(CACHE)).put(HAS_RUN, new Response(''));
}

/** Whatever is opened below the app's folder is the app, but for its own files. */
async function page(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, MATCH)) ?? (await cache.match('./', MATCH)) ?? fetch(request);
}

async function part(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, MATCH)) ?? (await caches.match(request, MATCH)) ?? fetch(request);
}

// The server answers "Vary: Origin", and a page's own scripts ask with an origin: without this they would never be found.
const MATCH: CacheQueryOptions = { ignoreVary: true };
