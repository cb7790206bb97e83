import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { PlanSchema } from '../../../geometry/planfile/schema/plan.ts';
import { planFile, smallFile } from './plans.ts';

type Json = Readonly<Record<string, unknown>>;

/** "pointer: sentence" of every problem of a text. */
function problemsOf(text: string): string[] {
  const read = parsePlan(text);
  return read.ok ? [] : read.problems.map(({ pointer, message }) => `${pointer}: ${message}`);
}
const problemsIn = (file: unknown) => problemsOf(JSON.stringify(file));

const wall = { id: 'w1', from: [0, 0], to: [3048, 0], thickness: 101.6 };
const window = { id: 'o1', wall: 'w1', kind: 'window', offset: 0, width: 914.4, bottom: 1200, top: 2000 };
const desk = { id: 't1', name: 'Desk', shape: { circle: { center: [0, 0], radius: 1 } }, bottom: 0, top: 762 };
const detector = { id: 'd1', at: [0, 0], base: 762, radius: 50.8, tall: 25.4 };
const level = (change: Json = {}): Json => ({
  id: 'L1',
  name: 'Basement',
  order: 0,
  ceiling: 2286,
  living: 'lived-in',
  ground: 'basement',
  walls: [wall],
  ...change,
});
const onLevel = (change: Json) => smallFile({ levels: [level(change)] });
const polygon = (...points: readonly (readonly [number, number])[]) =>
  onLevel({ objects: [{ ...desk, shape: { polygon: { points } } }] });

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
    ['{}', '/format: This is not a Stillspot plan: "format" is missing, needs "stillspot-plan".'],
    [
      '{"format":"other","version":9}',
      '/format: This is not a Stillspot plan: "format" is "other", needs "stillspot-plan".',
    ],
    [
      '{"format":"stillspot-plan","version":3,"levels":0}',
      '/version: This file is version 3; this Stillspot reads version 1. Open it with a newer Stillspot.',
    ],
  ])('%j has one problem: %s', (text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
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
      { numRuns: 5000 },
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
      '/levels/0/ceiling: Level L1: "ceiling" is 0, needs a number of mm, more than 0, at most 10000000.',
    ],
    [
      'a wall below zero',
      onLevel({ walls: [{ ...wall, thickness: -1 }] }),
      '/levels/0/walls/0/thickness: Wall w1 on level L1: "thickness" is -1, needs a number of mm, 0 to 10000000.',
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
      '/levels/0/objects/0/shape/polygon/points: Object t1 on level L1: "shape.polygon.points" is a list of 2, needs a list of 3 to 1000 points.',
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
      '/tapeTolerance: The plan: "tapeTolerance" is -1, needs a number of mm, 0 to 10000000.',
    ],
    [
      'a kit',
      smallFile({ kit: { minimumHours: 0 } }),
      '/kit/minimumHours: The plan: "kit.minimumHours" is 0, needs a number of hours, more than 0, at most 10000000.',
    ],
  ])('%s: it names the place and the thing', (_, file, problem) => {
    expect(problemsIn(file)).toContain(problem);
  });

  it('a number that is too large to be one', () => {
    const text = JSON.stringify(onLevel({})).replace('2286', '1e999');
    expect(problemsOf(text)).toEqual([
      '/levels/0/ceiling: Level L1: "ceiling" is Infinity, needs a number of mm, more than 0, at most 10000000.',
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

describe('parsePlan(text) on the meaning of a plan', () => {
  const override = (...overrides: readonly Json[]) => smallFile({ protocol: { overrides } });
  it.each<[string, unknown, string]>([
    [
      'two walls of one id',
      onLevel({ walls: [wall, { ...wall, to: [0, 9] }] }),
      '/levels/0/walls/1/id: Wall w1 on level L1 has the same id as wall w1 on level L1. Give one of them another id.',
    ],
    [
      'a detector with the id of its level',
      onLevel({ detectors: [{ ...detector, id: 'L1' }] }),
      '/levels/0/detectors/0/id: Detector L1 on level L1 has the same id as level L1. Give one of them another id.',
    ],
    [
      'an opening without a wall',
      onLevel({ openings: [{ ...window, wall: 'w9' }] }),
      '/levels/0/openings/0/wall: Window o1 on level L1 belongs to the wall "w9", which is not in the file. Name a wall of its own level.',
    ],
    [
      'an opening in a wall of another level',
      smallFile({ levels: [level(), level({ id: 'L2', walls: [], openings: [window] })] }),
      '/levels/1/openings/0/wall: Window o1 on level L2 belongs to the wall "w1", which is on another level. Name a wall of its own level.',
    ],
    [
      'an opening past the end', // 3048 − 914.4 + 101.6 = 2235.2
      onLevel({ openings: [{ ...window, offset: 2235.2 }] }),
      '/levels/0/openings/0/offset: Window o1 on level L1 reaches 4 in past the end of its wall. Slide it back or shorten it.',
    ],
    [
      'an opening before the start, in the unit of the plan',
      { ...onLevel({ openings: [{ ...window, offset: -100 }] }), display: { length: 'metric' } },
      '/levels/0/openings/0/offset: Window o1 on level L1 reaches 10 cm past the start of its wall. Slide it back or shorten it.',
    ],
    [
      'an opening wider than its wall',
      onLevel({ openings: [{ ...window, width: 3352.8 }] }),
      '/levels/0/openings/0/width: Window o1 on level L1 is 11 ft wide and its wall is only 10 ft long. Shorten it or put it on a longer wall.',
    ],
    [
      'a head below the sill',
      onLevel({ openings: [{ ...window, bottom: 914.4, top: 609.6 }] }),
      '/levels/0/openings/0/top: Window o1 on level L1 has its top at 2 ft, below its bottom at 3 ft. Swap the two or measure again.',
    ],
    [
      'a fixture upside down',
      onLevel({ fixtures: [{ ...desk, kind: 'wood-stove', top: -304.8 }] }),
      '/levels/0/fixtures/0/top: Wood stove t1 on level L1 has its top at -1 ft, below its bottom at 0 in. Swap the two or measure again.',
    ],
    [
      'an outline that crosses itself',
      polygon([0, 0], [10, 10], [10, 0], [0, 10]),
      '/levels/0/objects/0/shape/polygon/points: Object t1 on level L1 has an outline that touches itself: side 1–2 meets side 3–4. Move a corner away.',
    ],
    [
      'a corner twice',
      polygon([0, 0], [10, 0], [10, 0], [0, 10]),
      '/levels/0/objects/0/shape/polygon/points/2: Object t1 on level L1 has two corners on one spot: 2 and 3. Take one of them out.',
    ],
    [
      'the first corner repeated at the end',
      polygon([0, 0], [10, 0], [0, 10], [0, 0]),
      '/levels/0/objects/0/shape/polygon/points/0: Object t1 on level L1 has two corners on one spot: 4 and 1. Take one of them out.',
    ],
    [
      'a time zone that is none',
      smallFile({ site: { timeZone: 'Basement/Sump' } }),
      '/site/timeZone: The site has the time zone "Basement/Sump", which is not known here. Write one like America/New_York.',
    ],
    [
      'an offset for a time zone',
      smallFile({ site: { timeZone: '+05:00' } }),
      '/site/timeZone: The site has the time zone "+05:00", which is not known here. Write one like America/New_York.',
    ],
    [
      'a profile that is not known',
      smallFile({ protocol: { profile: 'moon' } }),
      '/protocol/profile: The protocol has the profile "moon", which this Stillspot does not know.',
    ],
    [
      'a rule that does not exist',
      override({ rule: 'drafts', distance: 1, note: 'why' }),
      '/protocol/overrides/0/rule: Override 1 names the rule "drafts", which does not exist.',
    ],
    [
      'a rule looked for that does not exist',
      onLevel({ lookedFor: ['sump', 'drafts'] }),
      '/levels/0/lookedFor/1: Level L1 names the rule "drafts" under "lookedFor"; there is no such rule.',
    ],
    [
      'who looked for a rule that does not exist',
      onLevel({ lookedForBy: [{ rule: 'drafts', by: 'A. Tester', at: null }] }),
      '/levels/0/lookedForBy/0/rule: Level L1 names the rule "drafts" under "lookedForBy"; there is no such rule.',
    ],
    [
      'a rule with a band of distances',
      override({ rule: 'companion', distance: 300, note: 'why' }),
      '/protocol/overrides/0/rule: Override 1 names the rule "companion", which has no single least distance to replace.',
    ],
    [
      'a rule without a distance',
      override({ rule: 'room-use', distance: 300, note: 'why' }),
      '/protocol/overrides/0/rule: Override 1 names the rule "room-use", which has no single least distance to replace.',
    ],
    [
      'two overrides of one rule',
      override({ rule: 'sump', distance: 3048, note: '' }, { rule: 'sump', distance: 3000, note: '' }),
      '/protocol/overrides/1/rule: Override 2 names the rule "sump", which has an override already. Keep one of the two.',
    ],
    [
      'a looser distance without a note', // the published 84 in are 7 ft
      override({ rule: 'sump', distance: 1828.8, note: ' ' }),
      '/protocol/overrides/0/note: Override 1 loosens the rule "sump" from 7 ft to 6 ft without a note. Say why in the note.',
    ],
    [
      'a kit',
      smallFile({ kit: { minimumHours: 96, maximumHours: 48 } }),
      "/kit/maximumHours: The kit may stay for at most 48 hours and must stay for at least 96. Look at the kit's instructions.",
    ],
    [
      'a day that there is none',
      smallFile({ visit: { start: '2026-02-31T18:00:00Z' } }),
      '/visit/start: The visit has "start" as "2026-02-31T18:00:00Z", which names a day that the calendar does not have.',
    ],
    [
      'a leap second',
      smallFile({ visit: { end: '2016-12-31T23:59:60Z' } }),
      '/visit/end: The visit has "end" as "2016-12-31T23:59:60Z", which has a leap second; write second 59.',
    ],
    [
      'an hour that there is none',
      smallFile({ conditions: [{ item: 'windows-closed', state: 'kept', at: '2026-03-07T24:00:00Z' }] }),
      '/conditions/0/at: Condition 1 has "at" as "2026-03-07T24:00:00Z", which names a time that the clock does not have.',
    ],
    [
      'an offset that there is none',
      smallFile({ visit: { closedSince: '2026-03-07T18:00:00+25:00' } }),
      '/visit/closedSince: The visit has "closedSince" as "2026-03-07T18:00:00+25:00", which has an offset that no clock has.',
    ],
    [
      'an end before the start', // 18:30 at +01:00 is 17:30 UTC
      smallFile({ visit: { start: '2026-03-07T18:00:00Z', end: '2026-03-07T18:30:00+01:00' } }),
      '/visit/end: The visit ends at 2026-03-07T18:30:00+01:00, not after its start at 2026-03-07T18:00:00Z. Look at both and at their offsets.',
    ],
    [
      'a reading of no detector',
      smallFile({ readings: [{ detector: 'd9', value: 3.9, unit: 'pCi/L' }] }),
      '/readings/0/detector: Reading 1 belongs to the detector "d9", which is not in the file.',
    ],
    [
      'a log entry of no detector',
      smallFile({ log: [{ detector: 'd9' }] }),
      '/log/0/detector: Log entry 1 belongs to the detector "d9", which is not in the file.',
    ],
    [
      'an earlier result of a day that there is none',
      smallFile({ earlier: [{ at: '2026-02-30T10:00:00Z', value: 1, unit: 'pCi/L', term: 'short-term' }] }),
      '/earlier/0/at: Earlier result 1 has "at" as "2026-02-30T10:00:00Z", which names a day that the calendar does not have.',
    ],
    [
      'an earlier result of no detector',
      smallFile({ earlier: [{ value: 1, unit: 'pCi/L', term: 'short-term', detector: 'd9' }] }),
      '/earlier/0/detector: Earlier result 1 belongs to the detector "d9", which is not in the file.',
    ],
    [
      'hours of work that end before they begin',
      smallFile({ practice: { days: [{ day: 'mon', from: '17:00', to: '08:30' }], daysOff: [] } }),
      '/practice/days/0/to: Working day 1 ends at 08:30, not after it begins at 17:00. Swap the two.',
    ],
    [
      'a day off that there is none',
      smallFile({ practice: { days: [], daysOff: ['2026-02-29'] } }),
      '/practice/daysOff/0: The plan has the day off "2026-02-29", which the calendar does not have.',
    ],
    [
      'two blanks of one id',
      smallFile({
        quality: ['blank', 'blank'].map((kind) => ({ id: 'q1', kind, value: 0, unit: 'pCi/L' })),
      }),
      '/quality/1/id: Blank q1 has the id "q1", which another one has. Give one of them another id.',
    ],
    [
      'a photo that lies elsewhere',
      smallFile({ log: [{ detector: 'd1', photos: ['https://example.org/a.png'] }] }),
      '/log/0/photos/0: Log entry 1: "photos[0]" is "https://example.org/a.png", needs a picture as a data address (PNG, JPEG or WebP, base64).',
    ],
  ])('%s: it names the place and the thing', (_, file, problem) => {
    expect(problemsIn(file)).toEqual([problem]);
  });

  it.each<[string, unknown]>([
    ['a wall without length: the engine tells', onLevel({ walls: [{ ...wall, to: wall.from }] })],
    ['an opening within 1 mm of the end', onLevel({ openings: [{ ...window, offset: 2134.5 }] })],
    ['a tighter distance without a note', override({ rule: 'sump', distance: 3048 })],
    ['the published distance itself', override({ rule: 'sump', distance: 2133.6 })],
    ['a looser distance with a note', override({ rule: 'sump', distance: 100, note: 'county form' })],
    [
      'rules that were looked for',
      onLevel({ lookedFor: ['outside-opening', 'moving-air', 'heat', 'direct-sun', 'sump'] }),
    ],
    ['a rule looked for that the profile does not have', onLevel({ lookedFor: ['running-machine'] })],
    ['29 February of a leap year', smallFile({ visit: { start: '2024-02-29T18:00:00Z' } })],
    ['small letters in an instant', smallFile({ visit: { start: '2024-02-29t18:00:00.5z' } })],
    ['a top level with its bottom', onLevel({ objects: [{ ...desk, top: 0 }] })],
    ['an outline of three corners', polygon([0, 0], [10, 0], [0, 10])],
  ])('accepts %s', (_, file) => {
    expect(problemsIn(file)).toEqual([]);
  });

  it('comes with the problems of structure, all at once, and blames nothing on what is broken itself', () => {
    const file = smallFile({
      levels: [
        level({
          walls: [
            { ...wall, thickness: 'thick' },
            { ...wall, id: 'w2' },
          ],
          openings: [
            { ...window, offset: 99_999 }, // its wall is broken: how long it is cannot be told
            { ...window, id: 'o2', wall: 'w2', offset: 3048 },
            { ...window, id: 'o2', wall: 'w2' },
          ],
          detectors: [{ ...detector, base: null }],
        }),
      ],
      visit: { start: 5, end: '2026-02-31T18:00:00Z' },
      readings: [{ detector: 'd1', value: 1, unit: 'pCi/L' }],
    });
    const read = parsePlan(JSON.stringify(file));
    expect(read.ok ? [] : read.problems.map(({ pointer }) => pointer)).toEqual([
      '/levels/0/walls/0/thickness',
      '/levels/0/detectors/0/base',
      '/visit/start',
      '/levels/0/openings/2/id',
      '/levels/0/openings/1/offset',
      '/visit/end',
    ]);
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
        site: { label: '', timeZone: 'UTC', latitude: null, longitude: null, north: 0, purpose: 'own-household' },
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

  it('gives the values that valibot gives, where no key is one that valibot drops', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        const text = JSON.stringify(file).replaceAll(/"(__proto__|constructor|prototype)":/g, '"x-$1":');
        const read = parsePlan(text);
        expect(read.ok && JSON.parse(JSON.stringify(read.plan))).toEqual(v.parse(PlanSchema, JSON.parse(text)));
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
  it('is what the reader makes of a file that leaves out all it may', () => {
    const read = parsePlan(JSON.stringify(smallFile()));
    expect(read.ok && { ...read.plan, levels: [] }).toEqual({ ...emptyPlan(), levels: [] });
  });

  it('has one basement, empty, lived in, with a ceiling at 7 ft 6 in', () => {
    expect(emptyPlan().levels).toEqual([
      level({ walls: [], openings: [], rooms: [], fixtures: [], objects: [], detectors: [] }),
    ]);
    expect(emptyPlan().levels[0]?.ceiling).toBe(90 * 25.4);
  });
});
