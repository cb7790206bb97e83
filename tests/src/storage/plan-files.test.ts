import { describe, expect, it } from 'vitest';
import { planFileName, readPlanFile, readPlanText } from '../../../src/storage/plan-files.ts';

describe('planFileName', () => {
  it.each([
    ['Alder Court, lower level', 'alder-court-lower-level.plan.json'],
    ['  ', 'plan.plan.json'],
    ['Café Müller / Keller', 'cafe-muller-keller.plan.json'],
    ['../../etc', 'etc.plan.json'],
    ['地下室', '地下室.plan.json'],
    ['x'.repeat(300), `${'x'.repeat(80)}.plan.json`],
  ])('%j is saved as %s', (title, name) => {
    expect(planFileName(title)).toBe(name);
  });
});

describe('a file that is refused', () => {
  it('lists every problem with its place, what was found and what was expected', () => {
    const read = readPlanText(
      '{"format": "stillspot-plan", "version": 1, "tapeTolerance": "one", "levels": 5}',
      'a.json',
    );
    if (read.ok) throw new Error('taken for a plan');
    expect(read.name).toBe('a.json');
    expect(read.problems.map(({ place }) => place)).toEqual(expect.arrayContaining(['/tapeTolerance', '/levels']));
    for (const { found, expected } of read.problems) expect(Math.min(found.length, expected.length)).toBeGreaterThan(0);
  });

  it('names the whole file where no place can be named', () => {
    const read = readPlanText('[]', 'list.json');
    expect(read).toMatchObject({ ok: false, problems: [{ place: 'the whole file' }] });
  });

  it('is not even read when it is larger than any plan', async () => {
    const huge = { name: 'photo.json', size: 25_000_000, text: () => Promise.reject(new Error('was read')) };
    expect(await readPlanFile(huge as unknown as File)).toMatchObject({
      ok: false,
      problems: [{ found: '25 MB', expected: 'a plan file, of less than 20 MB' }],
    });
  });

  it('is told in words when the browser may not read it', async () => {
    const locked = { name: 'locked.json', size: 10, text: () => Promise.reject(new Error('NotReadableError')) };
    const read = await readPlanFile(locked as unknown as File);
    expect(read).toMatchObject({ ok: false, problems: [{ found: 'a file that the browser may not read' }] });
  });
});
