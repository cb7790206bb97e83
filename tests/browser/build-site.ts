import { spawnSync } from 'node:child_process';

/** Builds the app as a user gets it: in a process without NODE_ENV, which vitest sets to "test". */
export function buildTo(folder: string, more: readonly string[] = []): void {
  const { NODE_ENV: _, ...env } = process.env;
  const args = [
    'node_modules/vite/bin/vite.js',
    'build',
    '--outDir',
    folder,
    '--emptyOutDir',
    '--logLevel',
    'warn',
    ...more,
  ];
  if (spawnSync(process.execPath, args, { stdio: 'inherit', env }).status !== 0) throw new Error('The build failed.');
}
