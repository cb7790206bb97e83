import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type HtmlTagDescriptor, type IndexHtmlTransformContext, type Plugin, transformWithOxc } from 'vite';
import { tokenStyles } from '../../theme/token-styles.ts';
import { APP_MANIFEST } from './app-manifest.ts';

const HERE = new URL('./', import.meta.url);
const ICONS = new URL('./icons/', HERE);

/** Files with fixed names, next to the page: the browser requests them by these names. */
const WORKER_FILE = 'service-worker.js';
const MANIFEST_FILE = 'app.webmanifest';

/** Fonts of the first paint: preloaded by the page, so that they do not wait for its scripts and styles. */
const FIRST_FONTS = /atkinson-hyperlegible-(?:next-latin-400|next-latin-700|mono-latin-400)-normal.*\.woff2$/;

/** Returns the plug-in that adds the service worker with the list of all files, the manifest and the icons to the build. */
export function precachePlugin(): Plugin {
  return {
    name: 'stillspot-precache',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (html, context) => ({
        html: withStylesLast(html),
        tags: [policyTag(html), ...fontTags(context), ...appTags()],
      }),
    },
    generateBundle() {
      for (const icon of readdirSync(ICONS)) {
        this.emitFile({ type: 'asset', fileName: icon, source: readFileSync(new URL(icon, ICONS)) });
      }
      this.emitFile({ type: 'asset', fileName: MANIFEST_FILE, source: JSON.stringify(APP_MANIFEST, null, 2) });
    },
    // After all other plug-ins, which may remove files: a version whose list names a missing file is never installed.
    async writeBundle({ dir = '' }, bundle) {
      const names = Object.keys(bundle)
        .filter((name) => !name.endsWith('.map'))
        .sort();
      // Browsers request the page by the URL of its folder.
      const files = Object.fromEntries(
        names.map((name) => [name === 'index.html' ? './' : name, sha256(readFileSync(join(dir, name)))]),
      );
      const version = createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 12);
      writeFileSync(join(dir, WORKER_FILE), await workerCode(version, files));
    },
  };
}

/**
 * Returns the content security policy: the page may load only its own files. Inline scripts and styles of the page, and the style of the
 * themes that is made at run time, are allowed by their hashes. React and Konva set styles by properties, which no policy blocks.
 */
function policyTag(html: string): HtmlTagDescriptor {
  const hashesOf = (tag: string) =>
    [...html.matchAll(new RegExp(`<${tag}>([\\s\\S]*?)</${tag}>`, 'g'))].map(([, text = '']) => hashSource(text));
  const content = [
    "default-src 'none'",
    ["script-src 'self'", ...hashesOf('script')].join(' '),
    ["style-src 'self'", ...hashesOf('style'), hashSource(tokenStyles())].join(' '),
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self' data:",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content }, injectTo: 'head-prepend' };
}

/** Moves the style sheets to the end of the body: a slow one blocks rendering of all that follows it, such as the text of the start. */
function withStylesLast(html: string): string {
  const links = html.match(/<link rel="stylesheet"[^>]*>/g) ?? [];
  const others = links.reduce((text, link) => text.replace(link, ''), html);
  return others.replace('</body>', `${links.join('')}</body>`);
}

function fontTags({ bundle = {} }: IndexHtmlTransformContext): HtmlTagDescriptor[] {
  return Object.keys(bundle)
    .filter((name) => FIRST_FONTS.test(name))
    .map((name) => ({
      tag: 'link',
      attrs: { rel: 'preload', as: 'font', type: 'font/woff2', crossorigin: true, href: `./${name}` },
      injectTo: 'head',
    }));
}

function appTags(): HtmlTagDescriptor[] {
  const icon = readFileSync(new URL('icon.svg', ICONS), 'utf8').replace(/\s*\n\s*/g, '');
  const inline = `data:image/svg+xml,${encodeURIComponent(icon)}`;
  return [
    { tag: 'link', attrs: { rel: 'manifest', href: `./${MANIFEST_FILE}` }, injectTo: 'head' },
    // Inline: browsers request the icon without the service worker, so offline it would be missing.
    { tag: 'link', attrs: { rel: 'icon', href: inline, type: 'image/svg+xml' }, injectTo: 'head' },
    { tag: 'link', attrs: { rel: 'apple-touch-icon', href: './icon-192.png' }, injectTo: 'head' },
    { tag: 'meta', attrs: { name: 'theme-color', content: APP_MANIFEST.theme_color }, injectTo: 'head' },
  ];
}

const hashSource = (text: string): string => `'sha256-${sha256(text)}'`;
const sha256 = (content: string | Buffer): string => createHash('sha256').update(content).digest('base64');

async function workerCode(version: string, files: Readonly<Record<string, string>>): Promise<string> {
  const file = new URL('./service-worker.ts', HERE);
  const { code } = await transformWithOxc(readFileSync(file, 'utf8'), 'service-worker.ts', { sourcemap: false });
  return `const VERSION = ${JSON.stringify(version)};\nconst FILES = ${JSON.stringify(files)};\n${code}`;
}
