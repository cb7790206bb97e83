import { readFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { RIVALS } from './rivals/all.ts';

/** Where and when a run was made. */
export interface Surroundings {
  /** ISO date. */
  readonly date: string;
  readonly processor: string;
  readonly cores: number;
  readonly memory: number;
  readonly node: string;
  /** Processes that wanted the processor in the minute before the start, on average. */
  readonly load: number;
  /** "name version" of each library. */
  readonly libraries: readonly string[];
}

export function surroundings(): Surroundings {
  const all = cpus();
  return {
    date: new Date().toISOString().slice(0, 10),
    processor: all[0]?.model ?? 'unknown processor',
    cores: all.length,
    memory: totalmem(),
    node: process.versions.node,
    load: loadavg()[0] ?? Number.NaN,
    libraries: [...new Set(RIVALS.map(({ library }) => library))].map((name) => `${name} ${versionOf(name)}`),
  };
}

/** From the lock file: libraries need not publish their own package.json. */
function versionOf(name: string): string {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    readonly packages: Readonly<Record<string, { readonly version?: string }>>;
  };
  return lock.packages[`node_modules/${name}`]?.version ?? '?';
}
