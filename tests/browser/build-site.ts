import { spawnSync } from 'node:child_process';

/** `test-hook` includes the hook by which the browser tests access the sheet (`src/editor/test-hook.ts`); `production` is the app as users get it. */
type Mode = 'test-hook' | 'production';

/** Builds the app, in a process without NODE_ENV, which vitest sets to "test". */
export function buildTo(folder: string, more: readonly string[] = [], mode: Mode = 'test-hook'): void {
  const { NODE_ENV: _, ...env } = process.env;
  const args = [
    'node_modules/vite/bin/vite.js',
    'build',
    '--outDir',
    folder,
    '--emptyOutDir',
    '--mode',
    mode,
    '--logLevel',
    'warn',
    ...more,
  ];
  if (spawnSync(process.execPath, args, { stdio: 'inherit', env }).status !== 0) throw new Error('The build failed.');
}
