import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const read = (path: string) => JSON.parse(readFileSync(path, 'utf8'));
const reasons: Readonly<Record<string, string>> = read('tests/run/dependencies.json');
const { dependencies, devDependencies } = read('package.json');
const names = [...Object.keys(dependencies), ...Object.keys(devDependencies)].sort();

describe('the dependencies', () => {
  it('each have a reason, and nothing else has one', () => {
    expect(Object.keys(reasons).sort()).toEqual(names);
  });

  it.each(names)('%s has a reason of more than a word', (name) => {
    expect(reasons[name]?.split(' ').length).toBeGreaterThan(1);
  });

  it.each(names)('%s is of one exact version', (name) => {
    expect({ ...dependencies, ...devDependencies }[name]).toMatch(/^\d+\.\d+\.\d+$/);
  });
});
