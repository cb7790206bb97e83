import { readFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { RIVALS } from './rivals/all.ts';

/** The machine and the time of a run. */
export interface Surroundings {
  /** ISO date. */
  readonly date: string;
  readonly processor: string;
  readonly cores: number;
  readonly memory: number;
  readonly node: string;
  /** Load average of the minute before the start. */
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

/** Returns a version from the lock file: libraries may not export their package.json; "?" if unknown. */
function versionOf(name: string): string {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    readonly packages: Readonly<Record<string, { readonly version?: string }>>;
  };
  return lock.packages[`node_modules/${name}`]?.version ?? '?';
}
