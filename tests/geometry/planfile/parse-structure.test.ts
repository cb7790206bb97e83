import { describe, expect, it } from 'vitest';
import { smallFile } from './plans.ts';
import { desk, detector, onLevel, polygon, problemsIn, problemsOf, wall } from './problems.ts';

describe('parsePlan(text) on the structure of a plan', () => {
  it.each<[string, unknown, string]>([
    [
      'a missing key',
      smallFile({ levels: undefined }),
      '/levels: The plan: "levels" is missing, needs a list of levels.',
    ],
    ['an old version', smallFile({ version: 0 }), '/version: The plan: "version" is 0, needs 1.'],
    ['a version in quotes', smallFile({ version: '1' }), '/version: The plan: "version" is "1", needs 1.'],
    [
      'a list for an object',
      smallFile({ site: [] }),
      '/site: The plan: "site" is an empty list, needs an object with label, timeZone, latitude, longitude, north and purpose.',
    ],
    [
      'an unknown choice',
      onLevel({ ground: 'sand' }),
      '/levels/0/ground: Level L1: "ground" is "sand", needs one of "basement", "slab", "crawlspace", "none".',
    ],
    [
      'a number out of range',
      onLevel({ ceiling: 0 }),
      '/levels/0/ceiling: Level L1: "ceiling" is 0, needs a number of mm, more than 0, at most 100000.',
    ],
    [
      'a wall below zero',
      onLevel({ walls: [{ ...wall, thickness: -1 }] }),
      '/levels/0/walls/0/thickness: Wall w1 on level L1: "thickness" is -1, needs a number of mm, 0 to 10000.',
    ],
    [
      'a coordinate too far',
      onLevel({ walls: [{ ...wall, to: [1e8, 0] }] }),
      '/levels/0/walls/0/to/0: Wall w1 on level L1: "to[0]" is 100000000, needs a number of mm, -10000000 to 10000000.',
    ],
    [
      'a third coordinate',
      onLevel({ walls: [{ ...wall, to: [1, 2, 3] }] }),
      '/levels/0/walls/0/to/2: Wall w1 on level L1: "to[2]" is 3, needs no third number.',
    ],
    [
      'half a point',
      onLevel({ walls: [{ ...wall, to: [1] }] }),
      '/levels/0/walls/0/to/1: Wall w1 on level L1: "to[1]" is missing, needs a number of mm, -10000000 to 10000000.',
    ],
    [
      'no point',
      onLevel({ walls: [{ ...wall, to: 'here' }] }),
      '/levels/0/walls/0/to: Wall w1 on level L1: "to" is "here", needs a point: [x, y] in mm.',
    ],
    [
      'a wall that is none',
      onLevel({ walls: [wall, 5] }),
      '/levels/0/walls/1: Wall 2 on level L1 is 5, needs a wall with id, from, to and thickness.',
    ],
    [
      'an id that is empty',
      onLevel({ walls: [{ ...wall, id: '' }] }),
      '/levels/0/walls/0/id: Wall 1 on level L1: "id" is "", needs an id: text that is not empty.',
    ],
    [
      'no shape',
      onLevel({ objects: [{ ...desk, shape: {} }] }),
      '/levels/0/objects/0/shape: Object t1 on level L1: "shape" is an empty object, needs a shape: one of "circle", "box" or "polygon".',
    ],
    [
      'two shapes at once',
      onLevel({
        objects: [
          { ...desk, shape: { circle: { center: [0, 0], radius: 1 }, box: { center: [0, 0], width: 1, depth: 1 } } },
        ],
      }),
      '/levels/0/objects/0/shape: Object t1 on level L1: "shape" is an object with "circle", "box", needs a shape: one of "circle", "box" or "polygon".',
    ],
    [
      'two corners',
      polygon([0, 0], [1, 1]),
      '/levels/0/objects/0/shape/polygon/points: Object t1 on level L1: "shape.polygon.points" is a list of 2, needs a list of 3 to 100,000 points.',
    ],
    [
      'a latitude',
      smallFile({ site: { latitude: 95 } }),
      '/site/latitude: The plan: "site.latitude" is 95, needs a number of degrees, -90 to 90, or null.',
    ],
    [
      'no offset',
      smallFile({ visit: { start: '2026-03-07T18:00:00' } }),
      '/visit/start: The plan: "visit.start" is "2026-03-07T18:00:00", needs a date and time with an offset, like 2026-03-07T18:00:00-05:00, or null.',
    ],
    [
      'an empty pair',
      onLevel({ detectors: [{ ...detector, pair: '' }] }),
      '/levels/0/detectors/0/pair: Detector d1 on level L1: "pair" is "", needs text that is not empty, or null.',
    ],
    [
      'a reading',
      smallFile({ readings: [{ detector: 'd1', value: -1, unit: 'pCi/L' }] }),
      '/readings/0/value: Reading 1: "value" is -1, needs a number, 0 to 1000000000.',
    ],
    [
      'a tolerance',
      smallFile({ tapeTolerance: -1 }),
      '/tapeTolerance: The plan: "tapeTolerance" is -1, needs a number of mm, 0 to 1000.',
    ],
    [
      'a kit',
      smallFile({ kit: { minimumHours: 0 } }),
      '/kit/minimumHours: The plan: "kit.minimumHours" is 0, needs a number of hours, more than 0, at most 10000.',
    ],
  ])('%s: it names the place and the thing', (_, file, problem) => {
    expect(problemsIn(file)).toContain(problem);
  });

  it.each<[string, unknown, string]>([
    [
      'the radius of a detector',
      onLevel({ detectors: [{ ...detector, radius: 10_001 }] }),
      '/levels/0/detectors/0/radius',
    ],
    ['the height of a detector', onLevel({ detectors: [{ ...detector, tall: 10_001 }] }), '/levels/0/detectors/0/tall'],
    ['its base', onLevel({ detectors: [{ ...detector, base: 100_001 }] }), '/levels/0/detectors/0/base'],
    ['a ceiling', onLevel({ ceiling: 100_001 }), '/levels/0/ceiling'],
    ['the thickness of a wall', onLevel({ walls: [{ ...wall, thickness: 10_001 }] }), '/levels/0/walls/0/thickness'],
    ['the tolerance of the tape', smallFile({ tapeTolerance: 1001 }), '/tapeTolerance'],
    [
      'the distance of an override',
      smallFile({ protocol: { overrides: [{ rule: 'sump', distance: 100_001 }] } }),
      '/protocol/overrides/0/distance',
    ],
    ['the hours of a kit', smallFile({ kit: { maximumHours: 10_001 } }), '/kit/maximumHours'],
  ])('%s that no house has', (_, file, pointer) => {
    const problems = problemsIn(file);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain(`${pointer}: `);
  });

  it('a list that is too long, with the problems of its entries up to the limit and of the rest of the file', () => {
    const overrides = Array.from({ length: 100_000 }, () => ({ rule: 3, distance: -1 }));
    const problems = problemsIn(smallFile({ protocol: { overrides }, tapeTolerance: -1 }));
    expect(problems).toHaveLength(1 + 2 * 100 + 1);
    expect(problems[0]).toBe(
      '/protocol/overrides: The plan: "protocol.overrides" is a list of 100000, needs at most 100 entries.',
    );
    expect(problems).toContainEqual(expect.stringMatching(/^\/tapeTolerance: /));
    const walls = Array.from({ length: 100_001 }, () => 5);
    expect(problemsIn(onLevel({ walls })).slice(0, 2)).toEqual([
      '/levels/0/walls: Level L1: "walls" is a list of 100001, needs at most 100,000 entries.',
      expect.stringMatching(/^\/levels\/0\/walls\/0: /),
    ]);
  });

  it('nothing of what refers to an entry beyond the limit of its list', () => {
    const reading = { detector: 'd100001', value: 1, unit: 'pCi/L' };
    const detectors = Array.from({ length: 100_001 }, (_, i) => ({
      id: `d${i + 1}`,
      label: '',
      at: [0, 0],
      base: 762,
      radius: 50,
      tall: 25,
    }));
    const file = onLevel({ detectors });
    expect(problemsIn({ ...file, readings: [reading] })).toEqual([
      '/levels/0/detectors: Level L1: "detectors" is a list of 100001, needs at most 100,000 entries.',
    ]);
  });

  it('another format, with every other problem', () => {
    expect(problemsIn({ ...smallFile({ tapeTolerance: -1 }), format: 'other' })).toEqual([
      '/format: This is not a Stillspot plan: "format" is "other", needs "stillspot-plan".',
      expect.stringMatching(/^\/tapeTolerance: /),
    ]);
  });

  it('an outline of more corners than sides can be compared, and none of one with thousands', () => {
    const circle = (count: number) =>
      Array.from({ length: count }, (_, i) => [
        2000 + 500 * Math.cos((2 * Math.PI * i) / count),
        2000 + 500 * Math.sin((2 * Math.PI * i) / count),
      ]);
    const objectOf = (points: readonly (readonly number[])[]) =>
      onLevel({ objects: [{ id: 't1', name: 'Stove', shape: { polygon: { points } }, bottom: 0, top: 900 }] });
    expect(problemsIn(objectOf(circle(20_000)))).toEqual([]);
    const comb = Array.from({ length: 8000 }, (_, i) => (i % 2 ? [i, 8000 + i] : [i + 8000, i]));
    expect(problemsIn(objectOf([...comb, [9000, -5000], [-5000, -5000]]))).toEqual([
      expect.stringMatching(/cannot be checked|touches itself/),
    ]);
  });

  it('a number that is too large to be one', () => {
    const text = JSON.stringify(onLevel({})).replace('2286', '1e999');
    expect(problemsOf(text)).toEqual([
      '/levels/0/ceiling: Level L1: "ceiling" is Infinity, needs a number of mm, more than 0, at most 100000.',
    ]);
  });

  it('a key that stands twice, of which one would be dropped', () => {
    const text = JSON.stringify(onLevel({})).replace('"thickness":101.6', '"thickness":101.6,"thickness":0');
    expect(problemsOf(text)).toEqual([
      '/levels/0/walls/0/thickness: Wall w1 on level L1 has the key "thickness" twice. Take one of the two out.',
    ]);
  });

  it('a pointer escapes what RFC 6901 says', () => {
    expect(problemsOf(`${JSON.stringify(smallFile()).slice(0, -1)},"a~/b":1,"a~/b":2}`)).toEqual([
      '/a~0~1b: The plan has the key "a~/b" twice. Take one of the two out.',
    ]);
  });
});

describe('parsePlan(text) on how much a plan may hold', () => {
  const override = { rule: 'sump', distance: 9999 };
  it.each<[string, unknown, string]>([
    ['no level', smallFile({ levels: [] }), '/levels: The plan: "levels" is an empty list, needs at least one level.'],
    [
      'a name of 201 characters',
      onLevel({ name: 'n'.repeat(201) }),
      '/levels/0/name: Level L1: "name" is text of 201 characters, needs at most 200 characters.',
    ],
    [
      'a title of 10,001 characters',
      smallFile({ title: 't'.repeat(10_001) }),
      '/title: The plan: "title" is text of 10001 characters, needs at most 10,000 characters.',
    ],
    [
      '101 overrides',
      smallFile({ protocol: { overrides: Array(101).fill(override) } }),
      '/protocol/overrides: The plan: "protocol.overrides" is a list of 101, needs at most 100 entries.',
    ],
    [
      '100,001 conditions',
      smallFile({ conditions: Array(100_001).fill({ item: 'windows-closed', state: 'kept' }) }),
      '/conditions: The plan: "conditions" is a list of 100001, needs at most 100,000 entries.',
    ],
  ])('%s is too much or too little', (_, file, problem) => {
    expect(problemsIn(file)).toContain(problem);
  });

  it('counts characters, not the units that a letter is stored in', () => {
    expect(problemsIn(onLevel({ name: '\u{1f3e0}'.repeat(200) }))).toEqual([]);
    expect(problemsIn(onLevel({ name: '\u{1f3e0}'.repeat(201) }))).toHaveLength(1);
  });
});
