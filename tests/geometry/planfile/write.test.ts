import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { howMany } from '../../helpers/how-many.ts';
import { planFile } from './plans.ts';

function planOf(text: string): Plan {
  const read = parsePlan(text);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.plan;
}

/** Returns the keys of every object in a value, in order, by the path to the object. */
function keysIn(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => [`${path}/${key}`, ...keysIn(each, `${path}/${key}`)]);
}

describe('writePlan(plan)', () => {
  it('writes what reads back as the same plan, unknown keys included', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        const plan = planOf(JSON.stringify(file));
        const text = writePlan(plan);
        // Not toStrictEqual, which takes a key named "constructor" for the class of the object.
        expect(isDeepStrictEqual(planOf(text), plan), text).toBe(true);
      }),
      { numRuns: howMany(40, 300) },
    );
  });

  it('keeps every key of a file in its order, those it does not know too, and adds defaults behind them', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        const text = JSON.stringify(file);
        const before = keysIn(JSON.parse(text));
        const after = keysIn(JSON.parse(writePlan(planOf(text))));
        const kept = new Set(before);
        expect(after.filter((path) => kept.has(path))).toEqual(before);
      }),
      { numRuns: howMany(40, 300) },
    );
  });

  it('writes the same text again and again', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        const text = writePlan(planOf(JSON.stringify(file)));
        expect(writePlan(planOf(text))).toBe(text);
      }),
    );
  });

  it('writes what an edit left as it was the same again, and anew what is another object or stands at another depth', () => {
    fc.assert(
      fc.property(planFile, fc.string(), (file, name) => {
        const plan = planOf(JSON.stringify(file));
        writePlan(plan);
        const levels = plan.levels.map((level) => ({
          ...level,
          walls: level.walls.slice(1),
          detectors: level.detectors.map((each, i) => (i === 0 ? { ...each, label: name } : each)),
        }));
        const after = { ...plan, levels, deep: { deeper: [plan.levels, plan.levels[0]?.walls] } };
        expect(writePlan(after)).toBe(writePlan(structuredClone(after)));
      }),
      { numRuns: howMany(40, 300) },
    );
  });

  it('writes every number so that it reads back as the same number', () => {
    fc.assert(
      fc.property(fc.oneof(fc.double({ min: -1e7, max: 1e7, noNaN: true }), fc.constant(-0)), (north) => {
        const plan = { ...emptyPlan(), site: { ...emptyPlan().site, north } };
        expect(planOf(writePlan(plan)).site.north).toBe(north);
      }),
    );
  });

  it('puts a short thing on one line, a long one on many, and a line break at the end', () => {
    const plan = emptyPlan();
    const [level] = plan.levels;
    if (!level) throw new Error('an empty plan has a level');
    const wall = { id: 'w1', from: [0, 0], to: [9144, 0], thickness: 203.2, side: 'auto' } as const;
    const lines = writePlan({ ...plan, levels: [{ ...level, walls: [wall] }] }).split('\n');
    expect(lines[0]).toBe('{');
    expect(lines).toContain('  "display": { "length": "feet-inches", "radon": "pCi/L" },');
    expect(lines).toContain(
      '        { "id": "w1", "from": [0, 0], "to": [9144, 0], "thickness": 203.2, "side": "auto" }',
    );
    expect(lines.slice(-2)).toEqual(['}', '']);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(120);
  });

  it('throws on what JSON cannot hold: that is our mistake, not the file of a user', () => {
    const plan = { ...emptyPlan(), tapeTolerance: Number.NaN };
    expect(() => writePlan(plan)).toThrow('a plan holds only what JSON can hold, got NaN');
  });
});

describe('the samples', () => {
  const names = readdirSync('samples').filter((name) => name.endsWith('.plan.json'));

  it.each(names)('%s reads back as the same plan', (name) => {
    const plan = planOf(readFileSync(`samples/${name}`, 'utf8'));
    expect(planOf(writePlan(plan))).toStrictEqual(plan);
  });
});
