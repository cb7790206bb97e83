/**
 * Caches a whole version of the app, so that it opens offline. `precache-plugin.ts` builds this file separately and defines the constants
 * below. A page and its parts always come from one version: the page from the active one, its parts by file name, which has a content hash.
 */

/** The used part of ServiceWorkerGlobalScope, which the DOM types do not have. */
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
/** Cache entry that marks a version that has been active. */
const HAS_RUN = './has-run';

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(forgetOld().then(() => self.clients.claim())));
// Only at the user's request: a new version never takes over while work is open.
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') void self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === 'navigate' ? page(request) : part(request));
});

/** Caches all files or none: a version with a missing part is not installed. */
async function keepAll(): Promise<void> {
  // The page first: if it cannot be cached, nothing else is fetched.
  const start = await wholePage();
  const cache = await caches.open(CACHE);
  const wanted = await Promise.all(FILES.filter((file) => file !== './').map((file) => orKnown(file, cache)));
  await cache.addAll(wanted.filter((file) => file !== null).map(fresh));
  await cache.put('./', start);
}

/**
 * Resolves to the page as it is on the server now. The server may have been updated since it delivered this worker: a page that names a
 * part of another version is refused.
 */
async function wholePage(): Promise<Response> {
  const response = await fetch(fresh('./'));
  const html = await response.text();
  const parts = [...html.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, name = '']) => name);
  if (!response.ok || parts.length === 0 || !parts.every((name) => FILES.includes(name))) {
    throw new Error('The page on the server is not of this version.');
  }
  // A new response: a redirected one must not be used for a navigation.
  return new Response(html, { headers: response.headers });
}

/** Copies a file with a hashed name from an earlier version and resolves to null; else to the name, to be fetched. */
async function orKnown(file: string, cache: Cache): Promise<string | null> {
  const known = file.includes('/') ? await caches.match(file, MATCH) : undefined;
  if (!known) return file;
  await cache.put(file, known);
  return null;
}

const fresh = (file: string) => new Request(file, { cache: 'reload' });

/**
 * Deletes all older versions, also those that were never active, except the one that was active until now: open tabs still use it. Newer
 * caches are about to be installed.
 */
async function forgetOld(): Promise<void> {
  const ours = (await caches.keys()).filter((name) => name.startsWith(PREFIX)); // in order of creation
  const older = ours.slice(0, ours.indexOf(CACHE));
  const ran = await Promise.all(older.map(async (name) => (await caches.open(name)).match(HAS_RUN)));
  const last = ran.findLastIndex((mark) => mark !== undefined);
  await Promise.all(older.filter((_, index) => index !== last).map((name) => caches.delete(name)));
  await (await caches.open(CACHE)).put(HAS_RUN, new Response(''));
}

/** Every navigation below the app's folder is the app itself, except its own files. */
async function page(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, MATCH)) ?? (await cache.match('./', MATCH)) ?? fetch(request);
}

async function part(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, MATCH)) ?? (await caches.match(request, MATCH)) ?? fetch(request);
}

// The server sends "Vary: Origin", and module scripts are requested with an origin: without this they would never match.
const MATCH: CacheQueryOptions = { ignoreVary: true };
