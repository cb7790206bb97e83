import { describe, expect, it } from 'vitest';
import { PAPERS, troubleWith } from './battery.ts';
import { corpus, fileOf } from './sources.ts';

const COUNT = 30;

describe('mutated plan files', () => {
  it('are read or refused, and whatever is read goes through every command and a paper', async () => {
    const failures: string[] = [];
    for (let seed = 1; seed <= COUNT; seed++) {
      const { trouble } = await troubleWith(fileOf(seed), PAPERS.slice(seed % PAPERS.length).slice(0, 1));
      if (trouble) failures.push(`seed ${seed}: ${trouble}`);
    }
    expect(failures).toEqual([]);
  });

  it.each(corpus())('of the kept ones go through everything: %s', async (_, text) => {
    expect((await troubleWith(text)).trouble).toBe(null);
  });
});
