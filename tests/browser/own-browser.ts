import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { findBrowser, TEST_ARGS } from '../run/find-browser.mjs';

/** A browser with its own profile that can be killed at any instant and started again with the same profile. */
export class OwnBrowser {
  readonly #profile = mkdtempSync(join(tmpdir(), 'stillspot-profile-'));
  #process: ChildProcess | null = null;

  /** Starts the browser and returns an empty page in it. */
  async start(): Promise<Page> {
    const portFile = join(this.#profile, 'DevToolsActivePort');
    rmSync(portFile, { force: true });
    const started = spawn(
      findBrowser(),
      [
        ...TEST_ARGS,
        '--headless=new',
        '--remote-debugging-port=0',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--hide-crash-restore-bubble',
        `--user-data-dir=${this.#profile}`,
        'about:blank',
      ],
      // Its own process group: the browser is a tree of processes, and all of them are killed at once.
      { stdio: 'ignore', detached: true },
    );
    this.#process = started;
    while (!existsSync(portFile) || readFileSync(portFile, 'utf8').trim() === '') {
      if (started.exitCode !== null) throw new Error(`The browser ended with code ${started.exitCode}.`);
      await new Promise((done) => setTimeout(done, 20));
    }
    const [port] = readFileSync(portFile, 'utf8').split('\n');
    const browser = await chromium.connectOverCDP(`http://localhost:${port}`);
    const [context] = browser.contexts();
    if (!context) throw new Error('The browser has no context.');
    return context.newPage();
  }

  /** Ends every process of the browser at once, as the system does when it is out of memory; none of them can write anything more. */
  async kill(): Promise<void> {
    const { pid, exitCode, signalCode } = this.#process ?? {};
    if (!this.#process || pid === undefined || exitCode !== null || signalCode !== null) return;
    const ended = new Promise((done) => this.#process?.once('exit', done));
    process.kill(-pid, 'SIGKILL');
    await ended;
    for (const name of ['SingletonLock', 'SingletonSocket', 'SingletonCookie'])
      rmSync(join(this.#profile, name), { force: true });
  }

  async remove(): Promise<void> {
    await this.kill();
    rmSync(this.#profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  }
}

/** Opens the app in a page and waits until its test hook answers. */
export async function openApp(page: Page, address: string): Promise<Page> {
  await page.goto(address);
  await page.locator('#root > *').first().waitFor();
  await page.waitForFunction(() => window.__stillspot);
  return page;
}
