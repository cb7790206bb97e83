import fc from 'fast-check';
import { SIDES } from '../../../geometry/dimension/wall-gaps.ts';
import { ROOM_USES, ROOM_USES_ALLOWED } from '../../../geometry/plan/model.ts';
import {
  type CardAnswers,
  FAR,
  GROUP_IDS,
  LEAFLET_RULES,
  LEVEL_ANSWERS,
  SQUARES,
  THING_KINDS,
} from '../../../src/quick-card/answers.ts';

const maybe = <T>(one: fc.Arbitrary<T>, freq = 6) => fc.option(one, { nil: null, freq });
const step = fc.integer({ min: -1, max: SQUARES });
const square = fc.tuple(step, step).map(([x, y]) => `${x},${y}`);
const inches = (min: number, max: number) => fc.integer({ min, max }).map((n) => n * 25.4);

const USUAL_LEVELS = ['basement', 'basement', 'slab', 'crawlspace', 'over-basement'] as const;

const leaflet = fc.record({
  minimumHours: maybe(fc.constantFrom(24, 48, 72, 96)),
  maximumHours: maybe(fc.constantFrom(36, 72, 96, 144, 168)),
  labDays: maybe(fc.integer({ min: 1, max: 14 })),
  lowest: maybe(inches(10, 60), 2),
  highest: maybe(inches(40, 96), 2),
  distances: fc.dictionary(fc.constantFrom(...LEAFLET_RULES), inches(1, 60), { maxKeys: 2 }),
});

/** Any set of answers that a person could give, sensible or not. */
export const anyAnswers: fc.Arbitrary<CardAnswers> = fc.record({
  unit: fc.constantFrom('feet-inches' as const, 'metric' as const),
  leaflet,
  kits: fc.constantFrom(1 as const, 2 as const),
  level: maybe(fc.constantFrom(...LEVEL_ANSWERS, ...USUAL_LEVELS), 20),
  use: maybe(
    fc.oneof({ arbitrary: fc.constantFrom(...ROOM_USES_ALLOWED), weight: 8 }, fc.constantFrom(...ROOM_USES)),
    12,
  ),
  across: maybe(inches(40, 480), 40),
  along: maybe(inches(40, 480), 40),
  inside: fc.subarray([...SIDES]),
  things: fc.array(
    fc.record({
      kind: fc.constantFrom(...THING_KINDS),
      square: fc.oneof({ arbitrary: square, weight: 8 }, fc.constant(FAR)),
    }),
    { maxLength: 4 },
  ),
  none: fc.subarray([...GROUP_IDS]),
  support: maybe(
    fc.oneof(
      fc.record({ kind: fc.constant('table' as const), top: maybe(inches(10, 80), 2) }),
      fc.record({ kind: fc.constant('shelf' as const), top: maybe(inches(20, 72), 2), square }),
    ),
  ),
  ceiling: maybe(inches(60, 120), 2),
  closing: maybe(fc.constantFrom('2026-11-28T20:00:00-05:00', '2026-12-05T08:00:00-05:00')),
  company: maybe(fc.boolean()),
});
