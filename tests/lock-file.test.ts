import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

interface LockEntry {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly link?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

const lock: { readonly packages: Readonly<Record<string, LockEntry>> } = JSON.parse(
  readFileSync('package-lock.json', 'utf8'),
);
const entries = Object.entries(lock.packages).filter(([path]) => path !== '');

/** Packages with a program of their own for each platform. Some npm releases drop the other platforms (npm issue 4828). */
const PER_PLATFORM = ['rolldown', 'typescript', '@biomejs/biome', '@resvg/resvg-js'];

describe('package-lock.json', () => {
  it('holds no download address, and a checksum for every package', () => {
    expect(entries.length).toBeGreaterThan(100);
    expect(entries.filter(([, entry]) => entry.resolved !== undefined).map(([path]) => path)).toEqual([]);
    expect(entries.filter(([, entry]) => !entry.integrity && !entry.link).map(([path]) => path)).toEqual([]);
  });

  it.each(PER_PLATFORM)('holds the programs of %s for every platform it is made for', (name) => {
    const wanted = Object.entries(lock.packages[`node_modules/${name}`]?.optionalDependencies ?? {});
    expect(wanted.length).toBeGreaterThan(5);
    const missing = wanted.filter(([platform, version]) => {
      const entry = lock.packages[`node_modules/${platform}`];
      return entry?.version !== version || !entry.integrity;
    });
    expect(missing).toEqual([]);
  });

  it('pins every direct dependency to one version', () => {
    const root = lock.packages[''];
    const direct = Object.entries({ ...root?.dependencies, ...root?.devDependencies });
    expect(direct.length).toBeGreaterThan(10);
    expect(direct.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });
});
