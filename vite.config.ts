/// <reference types="vitest/config" />
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { precachePlugin } from './src/offline/precache-plugin.ts';

export default defineConfig({
  base: './', // the built page also runs from a sub-folder
  plugins: [react(), precachePlugin()],
  build: {
    outDir: 'dist',
    // On purpose: the canvas library, React and the geometry make one chunk of about 600 kB (175 kB compressed).
    chunkSizeWarningLimit: 900,
  },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    pool: 'forks',
  },
});
