import { fileURLToPath } from 'node:url';
import { build, type Rollup } from 'vite';

/** Returns a module of the app, with its fonts, as one script that sets the global `name`, for a page without other scripts; `es`: as a module. */
export async function bundleScript(entry: string, name: string, format: 'iife' | 'es' = 'iife'): Promise<string> {
  const output = (await build({
    configFile: false,
    // The same as in the app's own build.
    resolve: {
      alias: { pdfkit: fileURLToPath(new URL('../../node_modules/pdfkit/js/pdfkit.browser.mjs', import.meta.url)) },
    },
    logLevel: 'error',
    build: { write: false, minify: false, assetsInlineLimit: 1e6, lib: { entry, formats: [format], name } },
  })) as Rollup.RollupOutput[];
  const chunk = output[0]?.output.find((one) => one.type === 'chunk');
  if (!chunk) throw new Error('The build made no script.');
  return chunk.code;
}
