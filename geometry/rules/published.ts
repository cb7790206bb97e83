import type { RoomUse } from '../plan/model.ts';
import {
  AIR_MACHINES,
  centimeters,
  DUCTS,
  FRAME,
  feet,
  HABIT,
  HEATERS,
  inches,
  objects,
  ourReading,
  profile,
  rule,
  SUPPORT_SOURCE,
  TWO_THOUSAND_SQUARE_FEET,
  WASHERS,
} from './figures.ts';
import type { Profile, Source } from './types.ts';

/*
 * Published profiles, literally: only what each text says, with its own figures. A requirement without a figure is a
 * row without a limit, reported as not run; what a text does not name has no row. Two additions are our own and
 * marked so: rooms in which nobody places a detector though the text is silent, and the support of the detector.
 */

const STREAMS = [...DUCTS, ...AIR_MACHINES];

const primary = (cite: string): Source => ({ cite, mark: 'primary' });
const secondary = (cite: string): Source => ({ cite, mark: 'secondary' });

/** Excluded by every profile, whatever its text says. */
const ALWAYS_BARRED = ['closet', 'crawlspace', 'garage', 'stair', 'hall'] as const satisfies readonly RoomUse[];

/** Returns a room rule: the uses that the text excludes, and those on which it is silent and that we exclude anyway. */
function roomRule(listed: readonly RoomUse[], ...sources: readonly Source[]) {
  const ours = ALWAYS_BARRED.filter((use) => !listed.includes(use));
  const habit = ours.length > 0 ? [{ ...HABIT, of: ours }] : [];
  return rule(FRAME.room, { of: 'room', barred: [...listed, ...ours] }, {}, ...sources, ...habit);
}

const PA = (clause: string) => primary(`25 Pa. Code 240.310${clause}`);

/** 25 Pa. Code 240.310 (2018, effective 24 January 2019), placement read in full. It has no floor drain and no pair. */
export const PENNSYLVANIA: Profile = profile({
  id: 'pennsylvania-240-310',
  name: 'Pennsylvania, 25 Pa. Code 240.310',
  about: '25 Pa. Code 240.310 (2018), placement read in full in the primary text',
  term: 'short',
  rules: [
    roomRule(['kitchen', 'bathroom', 'spa', 'closet', 'crawlspace'], PA('(a)(2)')),
    rule(FRAME.eachOnGround, { of: 'level', choice: 'each-on-the-ground' }, {}, PA('(a)(3)')),
    rule(FRAME.height, { of: 'height' }, { least: inches(20), most: feet(6) }, PA('(a)(1)')),
    rule(FRAME.ceiling, { of: 'ceiling' }, { least: feet(1) }, PA('(a)(1)')),
    rule(
      { ...FRAME.opening, name: 'Exterior doors, all windows', says: 'Away from exterior doors and from windows' },
      { of: 'opening', inside: ['window'] },
      { least: feet(3) },
      PA('(a)(1)'),
    ),
    rule(FRAME.outsideWall, { of: 'outside-wall' }, { least: feet(1) }, PA('(a)(1)')),
    rule(FRAME.ducts, { of: 'fixture', kinds: DUCTS, streams: STREAMS }, { least: feet(3) }, PA('(a)(1)')),
    rule(FRAME.heat, { of: 'fixture', kinds: HEATERS, streams: [] }, { least: feet(4) }, PA('(a)(1)(vi)')),
    rule(FRAME.sun, { of: 'sun' }, { least: feet(4) }, PA('(a)(1)(vi)')),
    rule(FRAME.sump, { of: 'fixture', kinds: ['sump-pit'], streams: [] }, { least: feet(7) }, PA('(a)(1)')),
    rule(FRAME.washer, { of: 'fixture', kinds: WASHERS, streams: [] }, { least: feet(10) }, PA('(a)(2)(iii)')),
    rule(FRAME.objectOnly, objects(false), { least: inches(4) }, PA('(a)(1)')),
    rule(FRAME.support, { of: 'support' }, {}, SUPPORT_SOURCE),
  ],
  coverage: { area: null, sources: [PA('(a)(3)')] },
});

/** Not regularly occupied rooms, where a text requires those. */
const LIVED_IN_ONLY = ['storage', 'utility'] as const satisfies readonly RoomUse[];
const DAMP: readonly RoomUse[] = ['kitchen', 'bathroom', 'laundry', 'spa'];

const IL = (clause: string) => primary(`32 Ill. Adm. Code 422.130${clause}`);
const IL_APPENDIX = primary('32 Ill. Adm. Code Part 422, Appendix B');
const IL_CLOSED = secondary('32 Ill. Adm. Code 422.130, closed-building list, in copies and summaries');

/** 32 Ill. Adm. Code 422.130; placement read in the primary text, the pair and the 20 ft in copies. */
export const ILLINOIS: Profile = profile({
  id: 'illinois-422-130',
  name: 'Illinois, 32 Ill. Adm. Code 422.130',
  about: '32 Ill. Adm. Code 422.130: placement in the primary text; pair spacing and the 20 ft in copies of it',
  term: 'short',
  rules: [
    roomRule(
      [...DAMP, 'closet', 'crawlspace', ...LIVED_IN_ONLY],
      IL('(a)(1)(B)'),
      { ...IL('(a)(1)(F)'), of: ['closet', 'crawlspace'] },
      ourReading('422.130(a)(1)(A) names rooms that are lived in', LIVED_IN_ONLY),
    ),
    rule(FRAME.eachOnGround, { of: 'level', choice: 'each-on-the-ground' }, {}, IL('(a)(1)'), IL_APPENDIX),
    rule(FRAME.height, { of: 'height' }, { least: inches(20), most: feet(6) }, IL('(a)(1)(D)-(F)')),
    rule(
      { ...FRAME.ceiling, says: 'Below the ceiling, where it hangs' },
      { of: 'ceiling' },
      { least: feet(1) },
      IL('(a)(1)(D)-(F), for hung detectors'),
    ),
    rule(FRAME.opening, { of: 'opening', inside: [] }, { least: feet(3) }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.outsideWall, { of: 'outside-wall' }, { least: feet(1) }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.ducts, { of: 'fixture', kinds: DUCTS, streams: STREAMS }, { least: feet(3) }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.running, { of: 'running', kinds: AIR_MACHINES }, { least: feet(20) }, IL_CLOSED),
    rule(FRAME.heat, { of: 'fixture', kinds: HEATERS, streams: [] }, { least: feet(4) }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.sun, { of: 'sun' }, { least: 0 }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.sump, { of: 'fixture', kinds: ['sump-pit'], streams: [] }, { least: feet(7) }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.objectOnly, objects(false), { least: inches(4) }, IL('(a)(1)(D)-(F)')),
    rule(FRAME.support, { of: 'support' }, {}, SUPPORT_SOURCE),
    rule(
      FRAME.companion,
      { of: 'companion' },
      { least: inches(4), most: inches(5) },
      secondary('32 Ill. Adm. Code 422.130(c)(2), in a copy'),
    ),
  ],
  coverage: { area: TWO_THOUSAND_SQUARE_FEET, sources: [IL('(a)(1)(C)')] },
});

const OH = (clause: string) => primary(`Ohio Adm. Code 3701-69-07 App. A, ${clause}`);

/** Ohio Adm. Code 3701-69-07 Appendix A (final 22 March 2012), A.1 read in the primary text. It says "doors" without "exterior". */
export const OHIO: Profile = profile({
  id: 'ohio-3701-69-07',
  name: 'Ohio, Adm. Code 3701-69-07 App. A',
  about: 'Ohio Adm. Code 3701-69-07 Appendix A (2012), A.1 read in the primary text as far as it was visible',
  term: 'short',
  rules: [
    roomRule(
      [...DAMP, ...LIVED_IN_ONLY],
      OH('A.1.a-b'),
      ourReading('A.1.a names rooms that are lived in', LIVED_IN_ONLY),
    ),
    rule(FRAME.eachOnGround, { of: 'level', choice: 'each-on-the-ground' }, {}, OH('A.1')),
    rule(FRAME.height, { of: 'height' }, { least: inches(20), most: feet(6) }, OH('A.1')),
    rule(
      {
        ...FRAME.opening,
        name: 'All doors, exterior windows',
        says: 'Away from doors, and from exterior windows',
      },
      { of: 'opening', inside: ['door'] },
      { least: feet(3) },
      OH('A.1'),
    ),
    rule(FRAME.outsideWall, { of: 'outside-wall' }, { least: feet(1) }, OH('A.1')),
    rule(FRAME.ducts, { of: 'fixture', kinds: DUCTS, streams: STREAMS }, { least: feet(3) }, OH('A.1')),
    rule(FRAME.heat, { of: 'fixture', kinds: HEATERS, streams: [] }, { least: feet(4) }, OH('A.1')),
    rule(FRAME.sun, { of: 'sun' }, { least: 0 }, OH('A.1')),
    rule(FRAME.sump, { of: 'fixture', kinds: ['sump-pit'], streams: [] }, { least: feet(10) }, OH('A.1')),
    rule(FRAME.objectOnly, objects(false), { least: inches(4) }, OH('A.1')),
    rule(FRAME.support, { of: 'support' }, {}, SUPPORT_SOURCE),
  ],
  coverage: { area: TWO_THOUSAND_SQUARE_FEET, sources: [OH('A.1.c')] },
});

const HC = secondary('Health Canada, radon measurements in homes, older text, in Canadian summaries');
const HC_LEAFLET = secondary('Canadian health-unit leaflet');

/** Health Canada's homes guide, older text, for detectors exposed for at least three months. Secondary pages only. */
export const HEALTH_CANADA: Profile = profile({
  id: 'health-canada-long-term',
  name: 'Health Canada, long-term test',
  about: 'Health Canada homes guide, older text, read in secondary pages only; for tests of at least 91 days',
  term: 'long',
  rules: [
    roomRule(['kitchen', 'bathroom', 'laundry', 'closet'], HC),
    rule(
      FRAME.lowestLivedIn,
      { of: 'level', choice: 'lowest-lived-in' },
      {},
      secondary('Health Canada: the lowest level lived in for more than 4 h a day'),
    ),
    rule(FRAME.height, { of: 'height' }, { least: centimeters(80), most: centimeters(200) }, HC),
    rule(FRAME.ceiling, { of: 'ceiling' }, { least: centimeters(50) }, HC),
    rule(FRAME.opening, { of: 'opening', inside: [] }, {}, HC),
    rule(FRAME.outsideWall, { of: 'outside-wall' }, { least: centimeters(50) }, HC),
    rule(FRAME.insideWall, { of: 'inside-wall' }, { least: centimeters(40) }, HC),
    rule(FRAME.ducts, { of: 'fixture', kinds: STREAMS, streams: STREAMS }, {}, HC),
    rule(FRAME.heat, { of: 'fixture', kinds: HEATERS, streams: [] }, {}, HC),
    rule(FRAME.sun, { of: 'sun' }, { least: 0 }, HC_LEAFLET),
    rule(FRAME.objectOnly, objects(false), { least: centimeters(20) }, HC),
    rule(FRAME.support, { of: 'support' }, {}, SUPPORT_SOURCE),
  ],
  coverage: { area: null, sources: [HC] },
});
