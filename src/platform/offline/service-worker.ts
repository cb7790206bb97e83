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
/** Every file with the SHA-256 of its content, in base64; the page is `./`. */
declare const FILES: Readonly<Record<string, string>>;

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

/**
 * Caches all files or none: a version with a missing or wrong part is not installed. The hash reveals a server that returns its start page
 * for a missing file, or that has files of two versions.
 */
async function keepAll(): Promise<void> {
  // The page first: if it is not of this version, nothing else is fetched.
  const start = await fetched('./');
  const cache = await caches.open(CACHE);
  try {
    const names = Object.keys(FILES).filter((file) => file !== './');
    await Promise.all(names.map(async (file) => cache.put(file, (await known(file)) ?? (await fetched(file)))));
    await cache.put('./', start);
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

/** Resolves to a file from the server. Rejects if it is not the file of this version. */
async function fetched(file: string): Promise<Response> {
  const response = await fetch(new Request(file, { cache: 'reload' }));
  const right = response.ok ? await ofThisVersion(file, response) : null;
  if (!right) throw new Error(`${file} on the server is not of this version.`);
  return right;
}

/** Resolves to a file with a hashed name from an earlier version's cache; null if there is none, or if its content has another hash. */
async function known(file: string): Promise<Response | null> {
  const response = file.includes('/') ? await caches.match(file, MATCH) : undefined;
  return response ? ofThisVersion(file, response) : null;
}

/** Resolves to the response if its content has the hash of the file in this version; else to null. */
async function ofThisVersion(file: string, response: Response): Promise<Response | null> {
  const bytes = await response.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const isRight = btoa(String.fromCharCode(...digest)) === FILES[file];
  if (!isRight) return null;
  const headers = new Headers(response.headers);
  // They describe the compressed response; these bytes are decompressed.
  for (const name of ['content-encoding', 'content-length']) headers.delete(name);
  // A new response: a redirected one must not be used for a navigation.
  return new Response(bytes, { headers });
}

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

/** Resolves to the requested file of this version, else to the app's page: every navigation below its folder opens the app. */
async function page(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, MATCH)) ?? (await cache.match('./', MATCH)) ?? fetch(request);
}

async function part(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, MATCH)) ?? (await caches.match(request, MATCH)) ?? fetch(request);
}

// The server sends "Vary: Origin", and module scripts are requested with an origin: without this option they would never match.
const MATCH: CacheQueryOptions = { ignoreVary: true };
