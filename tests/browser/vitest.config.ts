import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { isLongRun } from '../helpers/how-many.ts';
import { LongestFirst } from '../run/longest-first.ts';

/** STILLSPOT_SLOW=5 slows every page by that factor (`harness.ts`). Limits only end failed waits, and are longer by the same factor. */
const slow = Number(process.env.STILLSPOT_SLOW ?? 1);

/** Files whose subject a file of the usual run covers in fewer cases. */
const LONG_RUN_ONLY = [
  'axe-screens', // `access-matrix` has every page and dialog; `panels-access`, `log`, `time`, `house` and others have their open parts
  'keyboard-ell', // `keyboard-job` does a whole job by keyboard
  'parts-missing', // `faults` has the parts of the start and one that loads later
  'pdf-picture', // `sheet-image` compares the page of the PDF with that of the browser
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
  // The same as in the app and on the command line.
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
    isolate: false, // no file changes the state of the helpers: one process reads them once, not forty
    setupFiles: ['tests/browser/each-file.ts'],
    maxWorkers: 2, // a test mostly waits for the page: the waits of two overlap
    // `npm test` can run the unit tests at the same time: a limit ends a test that hangs, and allows for a busy machine.
    testTimeout: 600_000 * slow,
    hookTimeout: 600_000 * slow,
    expect: { poll: { timeout: 60_000 * slow, interval: 40 } },
  },
});
