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
          groups: [
            // These two stay the same from version to version: not fetched again.
            {
              name: 'react',
              tags: ['$initial'],
              test: /node_modules[\\/](?:react|react-dom|scheduler)[\\/]/,
              priority: 2,
            },
            { name: 'konva', test: /node_modules[\\/]konva[\\/]lib[\\/](?!shapes)/, priority: 2 },
            // One file: forty small ones are compressed worse and asked for one by one.
            {
              name: 'sheet',
              test: /[\\/]src[\\/](?:editor[\\/](?!input[\\/]enter-words|overlay[\\/](?:cross-words|move-animation|note-picture|pointer-note|tracing-frame)|paint[\\/](?:note|spots)\.|tools[\\/]late[\\/]|lengths[\\/]boxes|tape[\\/](?:key-burst|tape-text))|drawing[\\/](?!labels[\\/](?:paper-lines|taped)\.)|theme[\\/])/,
            },
            { name: 'start', tags: ['$initial'], priority: 1 },
            { name: 'empty-sheet', test: /[\\/]draw[\\/](?:empty-sheet|picture-button|bring-in)/, priority: 1 },
            // What the page loads by itself once it shows: a tablet waits longer for twenty files than for their bytes.
            { name: 'fields', test: /[\\/]src[\\/]ui[\\/]fields[\\/]/ },
            {
              name: 'guidance',
              test: /[\\/]src[\\/](?:advice[\\/]guidance|protocol[\\/](?:conditions|custody|results|timing|validity)[\\/])/,
            },
            { name: 'sun', test: /[\\/](?:geometry[\\/]sun[\\/]|direct-sun\.ts|sun-words\.ts)/ },
            {
              name: 'questions',
              test: /[\\/]src[\\/]ui[\\/](?:questions[\\/]|stages[\\/](?:house[\\/](?:walk-fields|state-words)|draw[\\/](?:level[\\/]|tracing)))/,
            },
          ],
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
