import { ROOM_USES_BARRED } from '../plan/model.ts';
import {
  AIR_MACHINES,
  DUCTS,
  FRAME,
  feet,
  HEATERS,
  inches,
  rule,
  SUPPORT_SOURCE,
  TWO_THOUSAND_SQUARE_FEET,
} from './figures.ts';
import type { Profile, Source } from './types.ts';

const PA_SPOT: Source = { cite: '25 Pa. Code 240.310(a)(1)', mark: 'primary' };
const PA_HEAT: Source = { cite: '25 Pa. Code 240.310(a)(1)(vi)', mark: 'primary' };
const PA_ROOM: Source = { cite: '25 Pa. Code 240.310(a)(2)', mark: 'primary' };
const IL_SPOT: Source = { cite: '32 Ill. Adm. Code 422.130(a)(1)(D)-(F)', mark: 'primary' };
const HABIT: Source = { cite: 'common practice, no published source', mark: 'common-practice' };
const AIR = [...DUCTS, ...AIR_MACHINES];

/**
 * Short-term test of a home with passive detectors. The distances are those of 25 Pa. Code 240.310 (2018, read in full for
 * placement), which 32 Ill. Adm. Code 422.130 shares where both have a figure; the floor drain is the trade's habit.
 * Data only: this one table drives verdicts, shading, panels, sheets and the documentation.
 */
export const HOME_SHORT_TERM: Profile = {
  id: 'home-short-term',
  name: 'Home, short-term test',
  about: 'The working list: 25 Pa. Code 240.310 (2018) and what Illinois shares with it, and the habits of the trade',
  term: 'short',
  rules: [
    rule(FRAME.room, { of: 'room', barred: ROOM_USES_BARRED }, {}, PA_ROOM, IL_SPOT),
    rule(
      FRAME.lowest,
      { of: 'level', choice: 'lowest' },
      {},
      { cite: 'ANSI/AARST MAH-2019 3.1.1, 3.1.2', mark: 'primary' },
      { cite: '25 Pa. Code 240.310(a)(3)', mark: 'primary' },
    ),
    rule(FRAME.height, { of: 'height' }, { least: inches(20), most: feet(6) }, PA_SPOT, IL_SPOT),
    rule(FRAME.ceiling, { of: 'ceiling' }, { least: feet(1) }, PA_SPOT),
    rule(FRAME.opening, { of: 'opening', inside: [] }, { least: feet(3) }, PA_SPOT, IL_SPOT),
    rule(FRAME.outsideWall, { of: 'outside-wall' }, { least: feet(1) }, PA_SPOT, IL_SPOT),
    rule(FRAME.air, { of: 'fixture', kinds: AIR, streams: AIR }, { least: feet(3) }, PA_SPOT, IL_SPOT),
    rule(FRAME.heat, { of: 'fixture', kinds: HEATERS, streams: [] }, { least: feet(4) }, PA_HEAT, IL_SPOT),
    rule(FRAME.sun, { of: 'sun' }, { least: feet(4) }, PA_HEAT),
    rule(FRAME.sump, { of: 'fixture', kinds: ['sump-pit'], streams: [] }, { least: feet(7) }, PA_SPOT, IL_SPOT),
    rule(FRAME.drain, { of: 'fixture', kinds: ['floor-drain'], streams: [] }, { least: feet(3) }, HABIT),
    rule(FRAME.object, { of: 'object', walls: true }, { least: inches(4) }, PA_SPOT, IL_SPOT),
    rule(FRAME.support, { of: 'support' }, {}, SUPPORT_SOURCE),
    rule(
      FRAME.companion,
      { of: 'companion' },
      { least: inches(4), most: inches(8) },
      { cite: 'Minnesota licensing practice (2019), as reported', mark: 'secondary' },
      { cite: 'ANSI/AARST MAH-2019 8.5.2(d), more than 8 in apart is another location', mark: 'primary' },
    ),
  ],
  coverage: {
    area: TWO_THOUSAND_SQUARE_FEET,
    sources: [
      { cite: '32 Ill. Adm. Code 422.130(a)(1)(C)', mark: 'primary' },
      { cite: 'Ohio Adm. Code 3701-69-07 App. A, A.1.c', mark: 'primary' },
    ],
  },
};
