/// <reference types="vitest/config" />
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import type { TestSpecification } from 'vitest/node';
import { licensesPlugin } from './src/platform/offline/licenses-plugin.ts';
import { precachePlugin } from './src/platform/offline/precache-plugin.ts';
import { schemaTextsPlugin } from './src/platform/offline/schema-texts-plugin.ts';
import { PLACE_PACKAGES } from './src/platform/places/pack-places.ts';
import { placesPlugin } from './src/platform/places/places-plugin.ts';
import { localImports } from './tests/run/local-imports.ts';
import { LongestFirst } from './tests/run/longest-first.ts';

/** Tests of modules that hold state (the store, the tool, the open plan) or that replace globals: each file reads its modules anew. */
const WITH_STATE = ['tests/src/{commands,editor,platform,state,storage,ui}/**/*.test.{ts,tsx}'];

/** The longest files first, then the other ones that share a process. */
class UnitOrder extends LongestFirst {
  protected readonly longest = [
    'oracle/oracle',
    'protocol/whole-visits',
    'oracle/many-levels',
    'level/no-gain',
    'drawing/labels',
    'oracle/spots',
  ];

  protected override rankOfOther({ project }: TestSpecification): number {
    return project.name === 'app' ? 1 : 0;
  }
}

/** Returns what matches the modules whose path in the project begins with one of these. */
const modules = (...paths: string[]): RegExp => {
  const separator = '[\\\\/]';
  return new RegExp(`${separator}(?:${paths.join('|').replaceAll('/', separator)})`);
};

/** What the page itself imports. */
const INITIAL: '$initial'[] = ['$initial'];

/** What the sheet does without until its first picture is shown. */
const LATE_IN_EDITOR =
  'input/enter-words|overlay/(?:cross-words|move-animation|note-picture|pointer-note)|paint/(?:note|spots)\\.|tape/(?:key-burst|tape-text)|tools/late/';

/**
 * The files of the app. What is loaded together is one file: a tablet waits longer for forty small ones than for their bytes. A module goes to
 * the first of the groups that names it, by priority.
 */
const CHUNKS = [
  // These two stay the same from version to version: not fetched again.
  { name: 'react', tags: INITIAL, test: modules('node_modules/(?:react|react-dom|scheduler)/'), priority: 5 },
  { name: 'konva', test: modules('node_modules/konva/lib/(?!shapes)'), priority: 5 },
  { name: 'start', tags: INITIAL, priority: 4 },
  {
    name: 'sheet',
    test: modules(
      `src/editor/(?!${LATE_IN_EDITOR}|overlay/tracing-frame)`,
      'src/drawing/(?!labels/(?:paper-lines|taped)\\.)',
      'src/theme/',
      'src/state/edit-walls',
      'src/ui/fields/',
      'src/ui/questions/(?:none-here|wall-settings-fields)',
      'src/ui/stages/draw/(?:bring-in|empty-sheet|picture-button)',
      'geometry/edit/(?:mend-gap|merge-walls|split-join|thickness-edit)',
      'geometry/messages/(?:corner-words|gap-refusal|thickness-changed)',
      'geometry/dimension/opening-offsets',
    ),
    priority: 3,
  },
  // What is loaded after the first picture, and after it once the page is quiet: `main.tsx`.
  {
    name: 'after-start',
    test: modules(
      'src/commands/(?:after-start|clipboard|kept-wall-settings|limit-watch|tape-keys)',
      `src/editor/(?:${LATE_IN_EDITOR})`,
      'src/state/(?:copy-outline|direct-sun|duplicate-selection|lock-tracing|move-to-nearest)',
      'src/advice/sun-(?:on-spot|words)',
      'src/storage/library/old-trash',
      'geometry/sun/',
      'geometry/edit/(?:align|copied-answers|copy-walls|duplicate|paste)',
      'geometry/planfile/(?:clip|limits|unknown-keys)',
    ),
    priority: 1,
  },
  {
    name: 'after-picture',
    test: modules(
      'src/ui/(?:after-picture|announce/|shell/file-drop)',
      'src/state/second-opinion-at-rest',
      'src/platform/worker/recheck-client',
      'geometry/recheck/(?:compare|types)',
      'geometry/messages/(?:edit|spoken-name)',
    ),
    priority: 1,
  },
  // What judges the whole test, and shows it.
  {
    name: 'guidance',
    test: modules(
      'src/advice/guidance',
      'src/protocol/(?:conditions|custody|results|timing|validity)/',
      'src/state/(?:plan-guidance|test-state)',
      'src/storage/library/summary',
      'src/ui/(?:stages/still-to-do|verdict/test-line)',
    ),
    priority: 2,
  },
  {
    name: 'questions',
    test: modules('src/ui/(?:questions/|stages/(?:house/(?:state-words|walk-fields)|draw/(?:level/|tracing)))'),
  },
];

/** The build of the PDF library without Node's own compression: the same bytes in the browser and on the command line. */
const PDFKIT = fileURLToPath(new URL('node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url));

export default defineConfig({
  resolve: { alias: { pdfkit: PDFKIT } },
  base: './', // the built page also runs from a sub-folder
  plugins: [react(), placesPlugin(), schemaTextsPlugin(), licensesPlugin(PLACE_PACKAGES), precachePlugin()],
  build: {
    outDir: 'dist',
    // `tests/browser/bundle.test.ts` holds the start at its limit, compressed.
    chunkSizeWarningLimit: 900,
    rolldownOptions: {
      input: { start: fileURLToPath(new URL('index.html', import.meta.url)) },
      output: {
        codeSplitting: {
          groups: CHUNKS,
        },
      },
    },
  },
  test: {
    pool: 'forks',
    maxWorkers: '100%', // none counts on a quiet machine
    sequence: { sequencer: UnitOrder },
    // What hangs is ended, no more: how fast a test is depends on who else uses the machine.
    setupFiles: ['tests/helpers/with-sun.ts'],
    testTimeout: 600_000,
    hookTimeout: 600_000,
    projects: [
      {
        extends: true,
        plugins: [localImports()],
        test: {
          name: 'app',
          include: WITH_STATE,
          isolate: false,
          setupFiles: ['tests/helpers/fresh-modules.ts'],
        },
      },
      {
        extends: true,
        plugins: [localImports()],
        test: {
          name: 'engine',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...WITH_STATE, 'tests/browser/**'],
          // Modules that hold nothing that a test could change: a process reads them once, not again for each file.
          isolate: false,
        },
      },
    ],
  },
});
