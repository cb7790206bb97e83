// Opens the built app in the WebKit engine, as tablets and phones of that engine do: npm run webkit. Every stage of every sample must show
// without a fault; prints one line for each sample and exits with 1 at a fault. Needs Debian's packages webkit2gtk-driver and xvfb.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

const DRIVER = '/usr/bin/WebKitWebDriver';
/** Runs a program with a screen in memory. */
const SCREEN = '/usr/bin/xvfb-run';
const PORT = 4490;
/** The first visit draws after at most so long on a slow machine, ms. */
const FIRST_MS = 20_000;
/** The parts of a stage are loaded and drawn after so long, ms. */
const STAGE_MS = 2500;

/** Sends a command of WebDriver, W3C, and returns its value. @returns {Promise<any>} */
async function send(/** @type {string} */ method, /** @type {string} */ path, /** @type {object} */ body = {}) {
  const request = method === 'GET' ? { method } : { method, body: JSON.stringify(body) };
  const response = await fetch(`http://127.0.0.1:${PORT}${path}`, { ...request, signal: AbortSignal.timeout(60_000) });
  const { value } = /** @type {{ value: any }} */ (await response.json());
  if (value?.error) throw new Error(`${value.error}: ${value.message}`);
  return value;
}

/** Starts the browser without a screen. */
async function startBrowser() {
  const isHere = [DRIVER, SCREEN].every((path) => existsSync(path));
  const program = (isHere ? readdirSync('/usr/lib') : [])
    .map((folder) => `/usr/lib/${folder}/webkit2gtk-4.1/MiniBrowser`)
    .find((path) => existsSync(path));
  if (!program) {
    throw new Error('WebKit is not here. On Debian: apt-get install webkit2gtk-driver xvfb.');
  }
  const driver = spawn(SCREEN, ['-a', DRIVER, `--port=${PORT}`], {
    stdio: 'ignore',
    detached: true,
    env: { ...process.env, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1', WEBKIT_DISABLE_DMABUF_RENDERER: '1' },
  });
  const options = { 'webkitgtk:browserOptions': { binary: program, args: ['--automation'] } };
  for (let tries = 0; ; tries++) {
    await sleep(1000);
    try {
      const { sessionId } = await send('POST', '/session', { capabilities: { alwaysMatch: options } });
      const session = `/session/${sessionId}`;
      return {
        /** Runs a function in the page. */
        run: (/** @type {(...args: any[]) => unknown} */ inPage, /** @type {unknown[]} */ ...args) =>
          send('POST', `${session}/execute/sync`, { script: `return (${inPage}).apply(null, arguments)`, args }),
        open: (/** @type {string} */ url) => send('POST', `${session}/url`, { url }),
        choose: async (/** @type {string} */ file) => {
          const input = await send('POST', `${session}/element`, { using: 'css selector', value: 'input[type=file]' });
          await send('POST', `${session}/element/${Object.values(input)[0]}/value`, { text: file });
        },
        end: async () => {
          await send('DELETE', session).catch(() => undefined);
          process.kill(-(driver.pid ?? 0));
        },
      };
    } catch (error) {
      if (tries < 10) continue;
      process.kill(-(driver.pid ?? 0));
      throw error;
    }
  }
}

/** In the page: notes errors, and keeps frames coming, which the driver waits for. */
function watch() {
  const noted = /** @type {string[]} */ ([]);
  Object.assign(window, { noted });
  const frame = () => void requestAnimationFrame(frame);
  frame();
  const report = console.error;
  console.error = (...words) => {
    noted.push(words.join(' '));
    report(...words);
  };
  addEventListener('error', ({ message }) => noted.push(message));
  addEventListener('unhandledrejection', ({ reason }) => noted.push(String(reason)));
}

/** In the page: returns what was noted since the last call, and what the page itself says is wrong. */
function troubles() {
  const { noted } = /** @type {{ noted: string[] }} */ (/** @type {unknown} */ (window));
  const shown = document.getElementById('root')?.textContent ?? '';
  const words = shown.match(/.{0,60}(?:went wrong|did not load|did not work).{0,120}/g) ?? [];
  return [...noted.splice(0), ...words];
}

/** In the page: presses the stage of this number. Returns its name, or null after the last. */
function pressStage(/** @type {number} */ index) {
  const stage = /** @type {HTMLElement | undefined} */ (document.querySelectorAll('.stage-bar__stage')[index]);
  stage?.click();
  return stage?.querySelector('.stage-bar__name')?.textContent ?? stage?.textContent ?? null;
}

/** @param {Awaited<ReturnType<typeof startBrowser>>} browser @param {string} where @returns {Promise<number>} how many troubles were found */
async function countTroubles(browser, where) {
  const found = /** @type {string[]} */ (await browser.run(troubles));
  for (const words of found) process.stdout.write(`  ${where}: ${words.slice(0, 300)}\n`);
  return found.length;
}

async function walk(/** @type {string} */ address) {
  const browser = await startBrowser();
  try {
    await browser.open(address);
    for (let waited = 0; !(await browser.run(() => document.querySelector('#root > *') !== null)); waited += 200) {
      if (waited > FIRST_MS) throw new Error('The app did not start.');
      await sleep(200);
    }
    await browser.run(watch);
    await sleep(STAGE_MS);
    let count = await countTroubles(browser, 'first visit');
    const files = readdirSync(join(ROOT, 'samples')).filter((name) => name.endsWith('.plan.json'));
    for (const file of files) {
      await browser.choose(join(ROOT, 'samples', file));
      await sleep(STAGE_MS);
      const stages = [];
      for (let index = 0; ; index++) {
        const stage = /** @type {string | null} */ (await browser.run(pressStage, index));
        if (stage === null) break;
        stages.push(stage);
        await sleep(STAGE_MS);
        count += await countTroubles(browser, `${file}, ${stage}`);
      }
      if (stages.length === 0) throw new Error('The page has no stages.');
      process.stdout.write(`${file}: ${stages.join(', ')}\n`);
    }
    return count;
  } finally {
    await browser.end();
  }
}

await runPlainly(async () => {
  ensureDeps();
  const { build, preview } = await import('vite');
  const folder = mkdtempSync(join(tmpdir(), 'stillspot-webkit-'));
  try {
    delete process.env.NODE_ENV; // a developer's setting must not turn this into a development build
    await build({ root: ROOT, logLevel: 'warn', build: { outDir: folder, emptyOutDir: true } });
    const server = await preview({ root: ROOT, logLevel: 'warn', build: { outDir: folder }, preview: { port: 0 } });
    const count = await walk(server.resolvedUrls?.local[0] ?? '');
    await server.close();
    process.stdout.write(count === 0 ? 'No fault.\n' : `${count} faults.\n`);
    process.exitCode = count === 0 ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
