// Finds a Chromium-family browser, or installs Debian's. Node built-ins only.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readFileSync, statfsSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runPlainly } from './ensure-deps.mjs';

const LINUX_PATHS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/opt/google/chrome/chrome',
  '/usr/bin/microsoft-edge',
  '/snap/bin/chromium',
];
const MAC_APPS = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
const WINDOWS_PATHS = ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'];
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const HOW_TO = 'Install Chromium, Chrome or Edge, or set BROWSER_PATH to the program.';

const canRun = (/** @type {string} */ path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** @returns {string[]} */
export function knownPlaces(platform = process.platform, env = process.env, home = homedir()) {
  if (platform === 'darwin')
    return ['/Applications', `${home}/Applications`].flatMap((folder) =>
      MAC_APPS.map((app) => `${folder}/${app}.app/Contents/MacOS/${app}`),
    );
  if (platform === 'win32')
    return [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].flatMap((folder) =>
      folder ? WINDOWS_PATHS.map((path) => `${folder}\\${path}`) : [],
    );
  return LINUX_PATHS;
}

function onPath() {
  if (process.platform === 'win32') return [];
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** Ubuntu is left out on purpose: its package of this name only points to a snap. */
function canInstall() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/etc/os-release')) return false;
  return /^ID="?debian"?$/m.test(readFileSync('/etc/os-release', 'utf8'));
}

function installOnDebian() {
  process.stderr.write('No browser found. Installing Debian’s Chromium. This takes about half a minute, once.\n');
  const apt = (/** @type {string[]} */ ...args) =>
    spawnSync('apt-get', ['-qq', '-y', '-o', 'DPkg::Lock::Timeout=120', ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
      encoding: 'utf8',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  // The fonts are named: Chromium depends on none, and without a font a page shows no text.
  apt('update');
  const done = apt('install', '--no-install-recommends', 'chromium', 'fonts-dejavu-core');
  // A separate package, which not every release has: without it the tests run in Chromium itself.
  if (done.status === 0) return void apt('install', '--no-install-recommends', 'chromium-headless-shell');
  process.stderr.write(done.stderr ?? '');
  throw new Error(`Debian's package "chromium" could not be installed: see the lines above. ${HOW_TO}`);
}

/** Returns the path of a browser that can be started. Throws a plain sentence if there is none and none can be installed. */
export function findBrowser({ install = true } = {}) {
  const asked = process.env.BROWSER_PATH;
  if (asked) {
    if (canRun(asked)) return asked;
    throw new Error(`BROWSER_PATH is "${asked}", which is no program that can be run. ${HOW_TO}`);
  }
  const find = () => [...knownPlaces(), ...onPath()].find(canRun);
  const found = find();
  if (found) return found;
  if (!install || !canInstall()) throw new Error(`No browser found. ${HOW_TO}`);
  installOnDebian();
  const installed = find();
  if (!installed) throw new Error(`Chromium was installed but is not in any known place. ${HOW_TO}`);
  return installed;
}

/** Chromium without windows: the same engine, which opens a page in two thirds of the processor time. */
const HEADLESS_SHELLS = ['/usr/lib/chromium/chromium-headless-shell', '/usr/bin/chromium-headless-shell'];

/** Returns the path of the browser for tests that only read pages: one without windows if there is one, else as `findBrowser`. */
export function findHeadlessBrowser() {
  const browser = findBrowser();
  return process.env.BROWSER_PATH ? browser : (HEADLESS_SHELLS.find(canRun) ?? browser);
}

/** Start options for identical pixels in every run; the first one disables pages for the address bar, which each new context made. */
export const BROWSER_ARGS = [
  '--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup',
  '--force-color-profile=srgb',
  '--font-render-hinting=none',
  '--disable-lcd-text',
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), // Chromium refuses to start as root without it
];

/**
 * Start options of the browser tests; not for measurements. V8 compiles and collects garbage on the thread that runs the script: where every
 * core has a page of its own, the helper threads take a fifth more processor time and save none.
 */
export const TEST_ARGS = [...BROWSER_ARGS, '--js-flags=--single-threaded'];

/** Bytes of shared memory that two browsers with six pages each need at most, with a margin. */
const SHARED_MEMORY = 2 ** 30;

/**
 * Returns the options of the browser tests that Playwright adds and that are left out. It keeps shared memory in files below /tmp, because
 * /dev/shm is small in many containers: where that has room, the files would only take a tenth more processor time.
 */
export function testArgsLeftOut(/** @type {string} */ folder = '/dev/shm') {
  if (!existsSync(folder)) return [];
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize >= SHARED_MEMORY ? ['--disable-dev-shm-usage'] : [];
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  await runPlainly(() => process.stdout.write(`${findBrowser()}\n`));
