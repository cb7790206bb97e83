import { ROOM_USES_BARRED } from '../plan/model.ts';
import {
  AIR_MACHINES,
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

const PA_SPOT: Source = { cite: '25 Pa. Code 240.310(a)(1)', mark: 'primary' };
const PA_HEAT: Source = { cite: '25 Pa. Code 240.310(a)(1)(vi)', mark: 'primary' };
const PA_ROOM: Source = { cite: '25 Pa. Code 240.310(a)(2)', mark: 'primary' };
const PA_WASHER: Source = { cite: '25 Pa. Code 240.310(a)(2)(iii)', mark: 'primary' };
const IL_SPOT: Source = { cite: '32 Ill. Adm. Code 422.130(a)(1)(D)-(F)', mark: 'primary' };
const IL_ROOM: Source = { cite: '32 Ill. Adm. Code 422.130(a)(1)(B)', mark: 'primary' };
const EPA_ROOM: Source = {
  cite: "EPA Citizen's Guide and Home Buyer's and Seller's Guide, in copies",
  mark: 'secondary',
  of: ['hall', 'stair', 'utility'],
};
const AIR = [...DUCTS, ...AIR_MACHINES];

/**
 * Short-term test of a home with passive detectors. Most distances are those of 25 Pa. Code 240.310 (2018, read in
 * full for placement), which 32 Ill. Adm. Code 422.130 shares where both give a figure; figures from neither are
 * marked. The profile is our own: it tests one level, where Pennsylvania requires each zone on the ground, and it
 * covers outside windows only. Data only: this table drives verdicts, shading, panels, reports and the documentation.
 */
export const HOME_SHORT_TERM: Profile = profile({
  id: 'home-short-term',
  name: 'Home, short-term test',
  about:
    'A list of our own: figures of 25 Pa. Code 240.310 (2018) and 32 Ill. Adm. Code 422.130, the level of ANSI/AARST MAH-2019, habits of the trade and our reading, each marked. It is not the rule of any state',
  term: 'short',
  rules: [
    rule(
      FRAME.room,
      { of: 'room', barred: ROOM_USES_BARRED },
      {},
      PA_ROOM,
      IL_ROOM,
      { ...IL_ROOM, of: ['laundry'] },
      EPA_ROOM,
      { ...HABIT, of: ['storage', 'garage'] },
    ),
    rule(
      FRAME.lowest,
      { of: 'level', choice: 'lowest' },
      {},
      { cite: 'ANSI/AARST MAH-2019 3.1.1, 3.1.2', mark: 'primary' },
    ),
    rule(FRAME.height, { of: 'height' }, { least: inches(20), most: feet(6) }, PA_SPOT, IL_SPOT),
    rule(FRAME.ceiling, { of: 'ceiling' }, { least: feet(1) }, PA_SPOT),
    rule(FRAME.opening, { of: 'opening', inside: [] }, { least: feet(3) }, PA_SPOT, IL_SPOT),
    rule(FRAME.outsideWall, { of: 'outside-wall' }, { least: feet(1) }, PA_SPOT, IL_SPOT),
    rule(
      FRAME.air,
      { of: 'fixture', kinds: AIR, streams: AIR },
      { least: feet(3) },
      PA_SPOT,
      IL_SPOT,
      ourReading('fans and other air-moving devices as far as ducts', AIR_MACHINES),
    ),
    rule(FRAME.heat, { of: 'fixture', kinds: HEATERS, streams: [] }, { least: feet(4) }, PA_HEAT, IL_SPOT),
    rule(FRAME.sun, { of: 'sun' }, { least: feet(4) }, PA_HEAT),
    rule(FRAME.sump, { of: 'fixture', kinds: ['sump-pit'], streams: [] }, { least: feet(7) }, PA_SPOT, IL_SPOT),
    rule(FRAME.drain, { of: 'fixture', kinds: ['floor-drain'], streams: [] }, { least: feet(3) }, HABIT),
    rule(FRAME.washer, { of: 'fixture', kinds: WASHERS, streams: [] }, { least: feet(10) }, PA_WASHER),
    rule(
      FRAME.object,
      objects(true),
      { least: inches(4) },
      PA_SPOT,
      IL_SPOT,
      ourReading('interior walls as objects', ['inside-wall']),
    ),
    rule(FRAME.support, { of: 'support' }, {}, SUPPORT_SOURCE),
    rule(
      FRAME.companion,
      { of: 'companion' },
      { least: inches(4), most: inches(8) },
      { cite: 'Minnesota licensing practice (2019), as reported', mark: 'secondary' },
      { cite: 'ANSI/AARST MAH-2019 8.5.2(d), more than 8 in apart is another location', mark: 'primary' },
      ourReading('in one room and at one height', ['together']),
    ),
  ],
  coverage: {
    area: TWO_THOUSAND_SQUARE_FEET,
    sources: [
      { cite: '32 Ill. Adm. Code 422.130(a)(1)(C)', mark: 'primary' },
      { cite: 'Ohio Adm. Code 3701-69-07 App. A, A.1.c', mark: 'primary' },
    ],
  },
});
