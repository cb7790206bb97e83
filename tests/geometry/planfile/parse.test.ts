import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { PlanSchema } from '../../../geometry/planfile/schema/plan.ts';
import { howMany } from '../../helpers/how-many.ts';
import { planFile, smallFile } from './plans.ts';
import { desk, detector, type Json, level, onLevel, problemsIn, problemsOf, wall } from './problems.ts';

describe('parsePlan(text) of what is no plan', () => {
  it.each([
    ['', ': The file is empty.'],
    ['\uFEFF', ': The file is empty.'],
    [' \n ', ': The file is empty.'],
    ['<html>', ': The file is damaged or is not a plan: line 1, column 1 has <, needs a value.'],
    ['{\n  "format": stillspot\n}', ': The file is damaged or is not a plan: line 2, column 13 has s, needs a value.'],
    ['{"a":1,}', ': The file is damaged or is not a plan: line 1, column 8 has }, needs a key in double quotes.'],
    ['{"a" 1}', ': The file is damaged or is not a plan: line 1, column 6 has 1, needs a colon.'],
    ['{"a":1 "b":2}', ': The file is damaged or is not a plan: line 1, column 8 has ", needs a comma or }.'],
    [
      '{"a":[1,2',
      ': The file is damaged or is not a plan: line 1, column 10 has the end of the file, needs a comma or ].',
    ],
    ['{"a":[01]}', ': The file is damaged or is not a plan: line 1, column 8 has 1, needs a comma or ].'],
    ['{"a":NaN}', ': The file is damaged or is not a plan: line 1, column 6 has N, needs a value.'],
    [
      '{"a":"b\n"}',
      ': The file is damaged or is not a plan: line 1, column 8 has the end of the line, needs a closing quote.',
    ],
    [
      '{"a":"b\\x"}',
      ': The file is damaged or is not a plan: line 1, column 8 has \\, needs an escape like \\n or \\u00e9.',
    ],
    [
      '{"a":\u0000}',
      ': The file is damaged or is not a plan: line 1, column 6 has the unprintable sign 0, needs a value.',
    ],
    ['{}\r\n{}', ': The file is damaged or is not a plan: line 2, column 1 has {, needs the end of the file.'],
    [
      '['.repeat(300),
      ': The file is damaged or is not a plan: line 1, column 201 has [, needs nesting at most 200 deep.',
    ],
    ['[]', ': The file holds an empty list, not a plan.'],
    ['null', ': The file holds null, not a plan.'],
    ['"plan"', ': The file holds "plan", not a plan.'],
    [
      '{"format":"stillspot-plan","version":3,"levels":0}',
      '/version: This file is version 3; this Stillspot reads version 1. Open it with a newer Stillspot.',
    ],
  ])('%j has one problem: %s', (text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
  });

  it.each([
    ['{}', 'missing', ['/version', '/levels']],
    ['{"format":"other","version":9}', '"other"', ['/version', '/levels']],
  ])('%j is not a plan, and what else a plan needs is listed', (text, found, others) => {
    const [first, ...more] = problemsOf(text);
    expect(first).toBe(`/format: This is not a Stillspot plan: "format" is ${found}, needs "stillspot-plan".`);
    expect(more.map((problem) => problem.split(':')[0])).toEqual(others);
  });

  it('passes over a byte order mark, and counts columns without it', () => {
    expect(parsePlan(`\uFEFF${JSON.stringify(smallFile())}`).ok).toBe(true);
    expect(problemsOf('\uFEFF{x')).toEqual([
      ': The file is damaged or is not a plan: line 1, column 2 has x, needs a key in double quotes.',
    ]);
  });

  it('never throws, and agrees with the engine on what is JSON', () => {
    const signs = fc.constantFrom(...'{}[]:,"\\ux0159-+.eEtrufalsn \n\t\u0007é'.split(''));
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      fc.array(signs, { maxLength: 12 }).map((parts) => parts.join('')),
      fc.tuple(fc.json(), fc.nat(), fc.oneof(signs, fc.constant(''))).map(([text, at, sign]) => {
        const cut = at % (text.length + 1);
        return text.slice(0, cut) + sign + text.slice(cut + 1);
      }),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const read = parsePlan(text);
        const said = read.ok ? '' : (read.problems[0]?.message ?? '');
        expect(/^The file is (damaged|empty)/.test(said)).toBe(!isJson(text.replace(/^\uFEFF/, '')));
      }),
      { numRuns: howMany(400, 5000) },
    );
  });
});

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('parsePlan(text) on keys that are almost known', () => {
  it.each<[string, unknown, string]>([
    [
      'another case',
      onLevel({ Openings: [] }),
      '/levels/0/Openings: Level L1 has the key "Openings", which is almost "openings". Write "openings", or take it out.',
    ],
    [
      'a letter less',
      onLevel({ opening: [] }),
      '/levels/0/opening: Level L1 has the key "opening", which is almost "openings". Write "openings", or take it out.',
    ],
    [
      'another letter',
      onLevel({ detectorz: [] }),
      '/levels/0/detectorz: Level L1 has the key "detectorz", which is almost "detectors". Write "detectors", or take it out.',
    ],
    [
      'a letter more, beside the right key',
      onLevel({ walls: [{ ...wall, sides: 'inside', side: 'auto' }] }),
      '/levels/0/walls/0/sides: Wall w1 on level L1 has the key "sides", which is almost "side". Write "side", or take it out.',
    ],
    [
      'at the top of the file',
      smallFile({ Protocol: {} }),
      '/Protocol: The plan has the key "Protocol", which is almost "protocol". Write "protocol", or take it out.',
    ],
    [
      'inside a shape',
      onLevel({ objects: [{ ...desk, shape: { circle: { center: [0, 0], radius: 1, Radius: 2 } } }] }),
      '/levels/0/objects/0/shape/circle/Radius: Object t1 on level L1 has the key "Radius", which is almost "radius". Write "radius", or take it out.',
    ],
  ])('%s is refused with the right one', (_, file, problem) => {
    expect(problemsIn(file)).toEqual([problem]);
  });

  it.each(['openingList', 'my-openings', 'x', 'color', 'openins2', ''])('keeps %j, which is no slip', (key) => {
    const read = parsePlan(JSON.stringify(onLevel({ [key]: 1 })));
    expect(read.ok && (read.plan.levels[0] as unknown as Json)[key]).toBe(1);
  });
});

describe('parsePlan(text) on control characters', () => {
  it('drops them from texts; a note keeps its line ends; what it does not know is left alone', () => {
    const read = parsePlan(
      JSON.stringify(
        smallFile({
          title: 'Alder\u0000 Court\u007f\n',
          weather: [{ at: null, text: 'rain\u0007\nthen wind\r\n' }],
          own: 'kept\u0001',
        }),
      ),
    );
    if (!read.ok) throw new Error('refused');
    expect(read.plan.title).toBe('Alder Court');
    expect(read.plan.weather?.[0]?.text).toBe('rain\nthen wind\r\n');
    expect((read.plan as unknown as Json).own).toBe('kept\u0001');
  });

  it('drops them before ids are compared', () => {
    expect(problemsIn(onLevel({ walls: [wall, { ...wall, id: 'w\u00001' }] }))).toHaveLength(1);
  });
});

describe('parsePlan(text) of a plan', () => {
  it('accepts every valid file', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        expect(problemsIn(file)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('fills in what was left out: what the format says, and what claims nothing', () => {
    const file = onLevel({ detectors: [detector], fixtures: [{ ...desk, id: 'f1', kind: 'washer', name: undefined }] });
    expect(parsePlan(JSON.stringify(file))).toEqual({
      ok: true,
      plan: {
        format: 'stillspot-plan',
        version: 1,
        title: '',
        display: { length: 'feet-inches', radon: 'pCi/L' },
        site: {
          label: '',
          timeZone: 'UTC',
          latitude: null,
          longitude: null,
          north: 0,
          northAnswered: false,
          purpose: 'own-household',
        },
        protocol: { profile: 'home-short-term', overrides: [] },
        tapeTolerance: 25.4,
        levels: [
          level({
            walls: [{ ...wall, side: 'auto' }],
            openings: [],
            rooms: [],
            fixtures: [{ ...desk, id: 'f1', kind: 'washer', name: '', stream: null }],
            objects: [],
            detectors: [{ ...detector, label: '', pair: null }],
          }),
        ],
        kit: { kind: 'charcoal-barrier', minimumHours: 48, maximumHours: 96, labDays: 5 },
        visit: { closedSince: null, mitigationOnSince: null, start: null, end: null },
        conditions: [],
        readings: [],
      },
    });
  });

  it.each<[string, object | undefined, boolean]>([
    ['no site', undefined, true],
    ['a site without it', { latitude: 41, longitude: -81 }, true],
    ['a site without it, said to be answered', { northAnswered: true }, true],
    ['a site with it', { north: 0 }, false],
    ['a site with it, not answered', { north: 0, northAnswered: false }, true],
  ])('takes north for not answered where the file has none: %s', (_, site, isOpen) => {
    const read = parsePlan(JSON.stringify({ ...onLevel({}), site }));
    expect(read).toMatchObject({ ok: true, plan: { site: { north: 0 } } });
    expect(read.ok && read.plan.site.northAnswered === false).toBe(isOpen);
  });

  it('gives the values that valibot gives, where no key is one that valibot drops', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        const text = JSON.stringify(file).replaceAll(/"(__proto__|constructor|prototype)":/g, '"x-$1":');
        const read = parsePlan(text);
        const given = JSON.parse(text) as { readonly site?: object };
        const plan = v.parse(PlanSchema, given);
        // Also what no schema can say: north that the file does not have is not answered.
        const site = given.site && 'north' in given.site ? plan.site : { ...plan.site, northAnswered: false };
        expect(read.ok && JSON.parse(JSON.stringify(read.plan))).toEqual({ ...plan, site });
      }),
    );
  });

  it('keeps a key named __proto__ as a plain key: no prototype is changed', () => {
    const head = JSON.stringify(smallFile()).slice(0, -1);
    const read = parsePlan(`${head},"__proto__":{"polluted":true},"site":{"__proto__":{"latitude":1}}}`);
    if (!read.ok) throw new Error('refused');
    expect(Object.getPrototypeOf(read.plan)).toBe(Object.prototype);
    expect(Object.hasOwn(read.plan, '__proto__')).toBe(true);
    expect(read.plan.site.latitude).toBe(null);
    expect('polluted' in {}).toBe(false);
  });

  it('takes what stands only on the prototype for missing', () => {
    expect(problemsOf('{"format":"stillspot-plan","version":1,"__proto__":{"levels":[]}}')).toEqual([
      '/levels: The plan: "levels" is missing, needs a list of levels.',
    ]);
  });
});

describe('emptyPlan()', () => {
  it('is what the reader makes of a file that leaves out all it may, but for north, which nobody has answered', () => {
    const read = parsePlan(JSON.stringify(smallFile()));
    const { site } = emptyPlan();
    expect(read.ok && { ...read.plan, levels: [] }).toEqual({
      ...emptyPlan(),
      site: { ...site, northAnswered: false },
      levels: [],
    });
  });

  it('has one basement, empty, lived in, with a ceiling at 7 ft 6 in', () => {
    expect(emptyPlan().levels).toEqual([
      level({ walls: [], openings: [], rooms: [], fixtures: [], objects: [], detectors: [] }),
    ]);
    expect(emptyPlan().levels[0]?.ceiling).toBe(90 * 25.4);
  });
});
