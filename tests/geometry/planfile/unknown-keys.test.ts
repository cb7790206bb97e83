import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { describeUnknownKeys } from '../../../geometry/planfile/unknown-keys.ts';
import { smallFile } from './plans.ts';
import { type Json, onLevel, wall } from './problems.ts';

const words = (file: unknown) => {
  const read = parsePlan(JSON.stringify(file));
  return read.ok ? describeUnknownKeys(read.plan) : 'refused';
};

describe('describeUnknownKeys(plan)', () => {
  it('is empty for a plan of known keys', () => {
    expect(words(smallFile({}))).toBe('');
  });

  it('names where a key is, and says that it is kept', () => {
    expect(words(onLevel({ walls: [{ ...wall, color: 'red' }] }))).toBe(
      'The file has a key that Stillspot does not know: "/levels/0/walls/0/color". It is kept and not used.',
    );
  });

  it('names a key in full where its place is long', () => {
    const shade = { overhang: { depth: 500, above: 100, 'color of the awning': 'red' } };
    const opening = { id: 'o1', wall: 'w1', kind: 'window', offset: 100, width: 500, bottom: 900, top: 1500, shade };
    expect(words(onLevel({ openings: [opening] }))).toContain(
      '"/levels/0/openings/0/shade/overhang/color of the awning"',
    );
  });

  it('names three of many', () => {
    const many = Object.fromEntries(
      ['one1', 'two2', 'three3', 'four4', 'five5'].map((key) => [`own-${key}`, 1]),
    ) as Json;
    expect(words(smallFile(many))).toBe(
      'The file has 5 keys that Stillspot does not know: "/own-one1", "/own-two2", "/own-three3" and 2 more. They are kept and not used.',
    );
  });
});
