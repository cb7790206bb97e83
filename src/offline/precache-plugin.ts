import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { type Plugin, transformWithOxc } from 'vite';
import { APP_MANIFEST } from './app-manifest.ts';

const HERE = new URL('./', import.meta.url);
const ICONS = new URL('./icons/', HERE);

/** Written beside the page, under names that stay: the browser asks for them by these. */
const WORKER_FILE = 'service-worker.js';
const MANIFEST_FILE = 'app.webmanifest';

/** Makes the built app one that installs and opens offline: service worker with the list of all files, manifest, icons. */
export function precachePlugin(): Plugin {
  return {
    name: 'stillspot-precache',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: `./${MANIFEST_FILE}` }, injectTo: 'head' },
      // In the page itself: browsers fetch this one past the worker, and offline it would be missing.
      { tag: 'link', attrs: { rel: 'icon', href: inlineIcon(), type: 'image/svg+xml' }, injectTo: 'head' },
      { tag: 'link', attrs: { rel: 'apple-touch-icon', href: './icon-192.png' }, injectTo: 'head' },
      { tag: 'meta', attrs: { name: 'theme-color', content: APP_MANIFEST.theme_color }, injectTo: 'head' },
    ],
    async generateBundle(_, bundle) {
      const emit = (fileName: string, source: string | Uint8Array) =>
        this.emitFile({ type: 'asset', fileName, source });
      for (const icon of readdirSync(ICONS)) emit(icon, readFileSync(new URL(icon, ICONS)));
      emit(MANIFEST_FILE, JSON.stringify(APP_MANIFEST, null, 2));
      // The page itself is asked for by the folder that it lies in.
      const files = Object.keys(bundle).filter((name) => !/\.(?:html|map)$/.test(name));
      const hash = createHash('sha256');
      for (const name of Object.keys(bundle).sort()) hash.update(name).update(contentOf(bundle[name]));
      emit(WORKER_FILE, await workerCode(hash.digest('hex').slice(0, 12), ['./', ...files.sort()]));
    },
  };
}

const inlineIcon = () =>
  `data:image/svg+xml,${encodeURIComponent(readFileSync(new URL('icon.svg', ICONS), 'utf8').replace(/\s*\n\s*/g, ''))}`;

type Output =
  | { readonly type: 'chunk'; readonly code: string }
  | { readonly type: 'asset'; readonly source: string | Uint8Array };

function contentOf(output: Output | undefined): string | Uint8Array {
  if (!output) return '';
  return output.type === 'chunk' ? output.code : output.source;
}

async function workerCode(version: string, files: readonly string[]): Promise<string> {
  const file = new URL('./service-worker.ts', HERE);
  const { code } = await transformWithOxc(readFileSync(file, 'utf8'), 'service-worker.ts', { sourcemap: false });
  return `const VERSION = ${JSON.stringify(version)};\nconst FILES = ${JSON.stringify(files)};\n${code}`;
}
