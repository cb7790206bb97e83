import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** The file of the build with the licenses of all bundled packages. */
const LICENSES_FILE = 'licenses.txt';

/**
 * Returns the plug-in that adds the license of each bundled package, as most licenses require.
 * @param packed packages whose data the build contains in repacked form
 */
export function licensesPlugin(packed: readonly string[]): Plugin {
  return {
    name: 'stillspot-licenses',
    apply: 'build',
    generateBundle(_, bundle) {
      const folders = new Set(packed.map((name) => join('node_modules', name)));
      for (const chunk of Object.values(bundle)) {
        const names = chunk.type === 'chunk' ? Object.keys(chunk.modules) : chunk.originalFileNames;
        for (const name of names) {
          const folder = packageFolder(name);
          if (folder) folders.add(folder);
        }
      }
      const notices = [...new Set([...folders].map(noticeOf))].sort();
      this.emitFile({ type: 'asset', fileName: LICENSES_FILE, source: notices.join(`\n${'-'.repeat(80)}\n\n`) });
    },
  };
}

/** Returns the folder of the package that a module belongs to; null for our own. */
function packageFolder(module: string): string | null {
  const path = module.replace(/^\0/, '').split('?')[0] ?? '';
  const found = /^(.*[\\/])?node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(path);
  return found && existsSync(join(found[0], 'package.json')) ? found[0] : null;
}

function noticeOf(folder: string): string {
  const about: unknown = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const { name, version, license } = about as Record<string, string>;
  const file = readdirSync(folder).find((each) => /^(?:licen[cs]e|ofl|copying)/i.test(each));
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : `License: ${license ?? 'not named'}`;
  return `${name} ${version} (${license ?? 'license below'})\n\n${text}\n`;
}
