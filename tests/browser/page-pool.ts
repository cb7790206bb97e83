import type { Browser, BrowserContext, BrowserContextOptions, CDPSession, Page } from 'playwright-core';

/** A context with its page. */
export interface Lease {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Everything that the page logged as an error or threw since it was lent, oldest first. */
  readonly troubles: readonly string[];
}

export interface LeaseOptions extends BrowserContextOptions {
  readonly viewport: { readonly width: number; readonly height: number };
}

interface Prepare {
  /** Called for each new context that may be lent again. */
  context(context: BrowserContext): Promise<void>;
  /** Called for each new page, and for every other page of its context. */
  page(page: Page): Promise<void>;
}

/** Greatest number of contexts kept to be lent again: each has its own process. */
const WAITING = 4;

/** Methods that leave traces which cannot be seen or undone. */
const LEAVES_TRACES = {
  context: [
    'addCookies',
    'addInitScript',
    'exposeBinding',
    'exposeFunction',
    'grantPermissions',
    'newCDPSession',
    'route',
    'setExtraHTTPHeaders',
    'setGeolocation',
    'setOffline',
  ],
  page: ['addInitScript', 'close', 'emulateMedia', 'exposeBinding', 'exposeFunction', 'route'],
  clock: ['fastForward', 'install', 'pauseAt', 'resume', 'runFor', 'setFixedTime', 'setSystemTime'],
} as const;

/**
 * Contexts that are lent again. In a new one the app costs 1.3 s of processor time: a profile, a process, a cold cache. In one that has
 * shown the app before it costs 0.5 s. A context is lent again only if nothing was done with it that leaves traces (`LEAVES_TRACES`, a second
 * page, a crash, a listener, a button that is still down) and its store was found empty after it was emptied. Else it is closed.
 */
export class PagePool {
  /** In the order in which they were returned. */
  private readonly pages = new Set<PooledPage>();
  private readonly browser: Browser;
  private readonly emptyUrl: string;
  private readonly prepare: Prepare;

  /** @param emptyUrl a page without content, of the origin under test */
  constructor(browser: Browser, emptyUrl: string, prepare: Prepare) {
    this.browser = browser;
    this.emptyUrl = emptyUrl;
    this.prepare = prepare;
  }

  /** Returns an unused or emptied context. Its `close` returns it to the pool. @param isAlone whether it is never lent again */
  async lease({ viewport, ...options }: LeaseOptions, isAlone: boolean): Promise<Lease> {
    const key = JSON.stringify(options);
    const waiting = [...this.pages].findLast((each) => !isAlone && !each.isLent && each.key === key);
    if (waiting) return waiting.lend(viewport);
    const context = await this.browser.newContext({ viewport, ...options });
    if (!isAlone) await this.prepare.context(context);
    const page = await context.newPage();
    await this.prepare.page(page);
    context.on('page', (each) => void this.prepare.page(each));
    const made = new PooledPage(context, page, await context.newCDPSession(page), key, isAlone);
    context.close = () => this.release(made);
    this.pages.add(made);
    return made;
  }

  /** Returns the page's own session of the browser's protocol, which leaves no trace if it only sends input. */
  async sessionOf(page: Page): Promise<CDPSession> {
    const known = [...this.pages].find((each) => each.page === page);
    return known?.session ?? page.context().newCDPSession(page);
  }

  /** Takes back all contexts that are lent. */
  async takeBack(): Promise<void> {
    await Promise.all([...this.pages].map((each) => this.release(each)));
  }

  private async release(page: PooledPage): Promise<void> {
    if (!page.isLent) return;
    page.isLent = false;
    this.pages.delete(page);
    if (!(await page.isEmptied(this.emptyUrl))) return page.end();
    this.pages.add(page);
    const [oldest, ...others] = [...this.pages].filter(({ isLent }) => !isLent);
    if (!oldest || others.length < WAITING) return;
    this.pages.delete(oldest);
    await oldest.end();
  }
}

class PooledPage implements Lease {
  isLent = true;
  troubles: string[] = [];
  readonly end: () => Promise<void>;
  /** Whether something was done that leaves traces. */
  private isMarked: boolean;
  /** Buttons and keys that are down. */
  private readonly down = new Set<unknown>();
  /** The events that have listeners when nothing has been done with the page. */
  private readonly listened: string;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly session: CDPSession;
  readonly key: string;

  constructor(context: BrowserContext, page: Page, session: CDPSession, key: string, isAlone: boolean) {
    this.context = context;
    this.page = page;
    this.session = session;
    this.key = key;
    this.isMarked = isAlone;
    this.end = context.close.bind(context);
    this.watch();
    this.listened = listenedTo(context, page);
  }

  async lend(viewport: LeaseOptions['viewport']): Promise<Lease> {
    this.isLent = true;
    this.troubles = [];
    await this.page.setViewportSize(viewport);
    return this;
  }

  /** Removes what the page shows and has stored. Returns whether it is then like a new one. */
  async isEmptied(emptyUrl: string): Promise<boolean> {
    const isClean = !this.isMarked && this.down.size === 0 && listenedTo(this.context, this.page) === this.listened;
    if (!isClean) return false;
    await this.page.goto(emptyUrl);
    await this.page.mouse.move(-1, -1);
    await this.context.clearCookies();
    await this.session.send('Page.resetNavigationHistory');
    return this.page.evaluate(emptyStore);
  }

  private watch(): void {
    const mark = () => {
      this.isMarked = true;
    };
    const { context, page } = this;
    for (const name of LEAVES_TRACES.context) before(context, name, mark);
    for (const name of LEAVES_TRACES.page) before(page, name, mark);
    for (const name of LEAVES_TRACES.clock) before(context.clock, name, mark);
    for (const device of [page.mouse, page.keyboard]) {
      before(device, 'down', ([key]) => this.down.add(keyOf(key)));
      before(device, 'up', ([key]) => this.down.delete(keyOf(key)));
    }
    context.on('page', mark);
    page.on('crash', mark);
    page.on('console', (message) => {
      if (message.type() === 'error') this.troubles.push(message.text());
    });
    page.on('pageerror', (error) => this.troubles.push(String(error)));
    // The listener is added at the start: added only when a file is needed, it could come after the press that opens the picker.
    page.on('filechooser', () => undefined);
  }
}

/** Calls `first` before a method of this one object. */
function before(target: object, name: string, first: (args: readonly unknown[]) => void): void {
  const methods = target as Record<string, (...args: unknown[]) => unknown>;
  const own = methods[name]?.bind(target);
  if (!own) throw new Error(`There is no ${name} to watch.`);
  methods[name] = (...args) => {
    first(args);
    return own(...args);
  };
}

/** Returns the name of a key; 'mouse' for a mouse button, which is given with options or not at all. */
const keyOf = (key: unknown) => (typeof key === 'string' ? key : 'mouse');

function listenedTo(...targets: readonly object[]): string {
  type Emitter = { eventNames(): string[]; listenerCount(name: string): number };
  const emitters = targets as readonly Emitter[];
  return emitters.map((each) => each.eventNames().map((name) => `${name} ${each.listenerCount(name)}`)).join();
}

/** Runs in the page: removes everything that its origin has stored. Returns whether nothing is left. */
async function emptyStore(): Promise<boolean> {
  window.name = '';
  localStorage.clear();
  sessionStorage.clear();
  for (const name of await caches.keys()) await caches.delete(name);
  for (const { name } of await indexedDB.databases())
    await new Promise<void>((done, failed) => {
      const request = indexedDB.deleteDatabase(name ?? '');
      request.onsuccess = () => done();
      request.onerror = () => failed(request.error);
    });
  const workers = await navigator.serviceWorker.getRegistrations();
  return workers.length + localStorage.length + (await indexedDB.databases()).length === 0;
}
