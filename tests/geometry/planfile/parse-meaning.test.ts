import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { smallFile } from './plans.ts';
import { desk, detector, type Json, level, onLevel, polygon, problemsIn, wall, window } from './problems.ts';

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
      'a year that is a slip',
      smallFile({ visit: { start: '2126-03-07T18:00:00Z' } }),
      '/visit/start: The visit has "start" as "2126-03-07T18:00:00Z", which is not in the years 1990 to 2100.',
    ],
    [
      'a year before anybody tested',
      smallFile({ visit: { mitigationOnSince: '1989-12-31T23:59:59Z' } }),
      '/visit/mitigationOnSince: The visit has "mitigationOnSince" as "1989-12-31T23:59:59Z", which is not in the years 1990 to 2100.',
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
      '/protocol/overrides/0/note: Override 1 loosens the rule "sump" from 7 ft to 6 ft without a note. Enter why in the note.',
    ],
    [
      'a kit',
      smallFile({ kit: { minimumHours: 96, maximumHours: 48 } }),
      "/kit/maximumHours: The kit may stay for at most 48 hours and must stay for at least 96. Check the kit's instructions.",
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
      '/visit/end: The visit ends at 2026-03-07T18:30:00+01:00, not after its start at 2026-03-07T18:00:00Z. Check both and their offsets.',
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
      'two log entries of one detector',
      {
        ...onLevel({ detectors: [detector] }),
        log: [{ detector: 'd1' }, { detector: 'd1', serial: 'CX-2', tampering: 'seen' }],
      },
      '/log/1/detector: Log entry 2 belongs to the detector "d1", as log entry 1 does. Put both into one entry.',
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
      'working hours that end before they begin',
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
      'a shade of no known kind',
      onLevel({ openings: [{ ...window, shade: 'curtain' }] }),
      '/levels/0/openings/0/shade: Window o1 on level L1: "shade" is "curtain", needs "covered", "well", or an object with overhang or obstruction, or null.',
    ],
    [
      'an overhang that is negative',
      onLevel({ openings: [{ ...window, shade: { overhang: { depth: -1, above: 0 } } }] }),
      '/levels/0/openings/0/shade/overhang/depth: Window o1 on level L1: "shade.overhang.depth" is -1, needs a number of mm, 0 to 100000.',
    ],
    [
      'a shade with a key that is almost a known one',
      onLevel({ openings: [{ ...window, shade: { overhangs: { depth: 600, above: 0 } } }] }),
      '/levels/0/openings/0/shade/overhangs: Window o1 on level L1 has the key "overhangs", which is almost "overhang". Write "overhang", or take it out.',
    ],
    [
      'glass that is neither there nor not',
      onLevel({ openings: [{ ...window, glazed: 'yes' }] }),
      '/levels/0/openings/0/glazed: Window o1 on level L1: "glazed" is "yes", needs true or false.',
    ],
    [
      'a horizon below the ground',
      smallFile({ site: { horizon: -1 } }),
      '/site/horizon: The plan: "site.horizon" is -1, needs a number of degrees, 0 to 90.',
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
            { ...window, offset: 99_999 }, // its wall is invalid, so its length is not known
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
