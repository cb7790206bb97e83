import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { isLongRun } from '../helpers/how-many.ts';
import { LongestFirst } from '../run/longest-first.ts';

/** STILLSPOT_SLOW=5 slows every page so many times (`harness.ts`). A limit only ends what is waited for in vain, and comes so many times later then. */
const slow = Number(process.env.STILLSPOT_SLOW ?? 1);

/** Files whose subject a file of the usual run has too, in fewer cases. */
const LONG_RUN_ONLY = [
  'axe-screens', // `access-matrix` has every page and dialog, `panels-access`, `log`, `time`, `house` and others what is open in them
  'keyboard-ell', // `keyboard-job` does a whole job by keyboard
  'parts-missing', // `faults` has the parts of the start and one that comes later
  'pdf-picture', // `sheet-image` has the page of the PDF beside that of the browser
  'walk-ell', // `walk` draws the plain basement
  'walk-job', // `job`, `keyboard-job` and `ways` do whole jobs by mouse, by keyboard and by finger
];

class BrowserOrder extends LongestFirst {
  protected readonly longest = [
    '/offline',
    '/stages',
    '/panels-autosave',
    '/sun',
    '/faults',
    '/log',
    '/site',
    '/library',
    '/axe-screens',
  ];
}

export default defineConfig({
  // As in the app and on the command line.
  resolve: {
    alias: { pdfkit: fileURLToPath(new URL('../../node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)) },
  },
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.test.ts'],
    exclude: isLongRun ? [] : LONG_RUN_ONLY.map((name) => `tests/browser/${name}.test.ts`),
    globalSetup: ['tests/browser/global-setup.ts'],
    environment: 'node',
    sequence: { sequencer: BrowserOrder },
    pool: 'forks',
    isolate: false, // no file changes what the helpers hold: one process reads them once, not forty
    setupFiles: ['tests/browser/each-file.ts'],
    maxWorkers: 2, // a test mostly waits for the page: the waits of two overlap
    // `npm test` runs the unit tests beside these: a limit ends what hangs, and leaves room for a machine that is busy with more.
    testTimeout: 600_000 * slow,
    hookTimeout: 600_000 * slow,
    expect: { poll: { timeout: 60_000 * slow, interval: 40 } },
  },
});
